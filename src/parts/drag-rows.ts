/** Where a row is let go: in which list, and at which place of it, counted without the row itself. */
export interface DropPlace {
  readonly list: string
  readonly at: number
}

interface DragOptions {
  /** The row that is taken up; rows are children of elements with `data-drop-list`. */
  readonly row: HTMLElement
  readonly onDrop: (to: DropPlace) => void
}

/** How far a pointer moves before it drags; less is a press. */
const thresholdPx = 6
/** Near the upper and lower edge the page goes on by itself. */
const edgePx = 90
const scrollPx = 14

/**
 * Drags a row by its handle, with finger, pen or mouse, into any list of the same name's family. The row follows the
 * pointer; a line shows where it would go. Escape, or a pointer that is taken away, leaves everything as it was.
 */
export function beginDrag(event: PointerEvent, { row, onDrop }: DragOptions): void {
  const handle = event.currentTarget
  if (!(handle instanceof HTMLElement) || event.button !== 0) return
  const family = row.closest<HTMLElement>('[data-drop-family]')
  const startY = event.pageY
  let to: DropPlace | null = null
  let moving = false
  let clientY = event.clientY
  let frame = 0

  const follow = () => {
    row.style.setProperty('translate', `0 ${clientY + window.scrollY - startY}px`)
    to = markPlace(family, row, clientY)
  }
  const creep = () => {
    const by = clientY < edgePx ? -scrollPx : clientY > window.innerHeight - edgePx ? scrollPx : 0
    if (by !== 0) {
      window.scrollBy(0, by)
      follow()
    }
    frame = requestAnimationFrame(creep)
  }
  const onMove = (move: PointerEvent) => {
    clientY = move.clientY
    if (!moving && Math.abs(move.pageY - startY) < thresholdPx) return
    if (!moving) {
      moving = true
      row.classList.add('drag-row')
      frame = requestAnimationFrame(creep)
    }
    follow()
  }
  const end = (drop: boolean) => {
    cancelAnimationFrame(frame)
    handle.removeEventListener('pointermove', onMove)
    handle.removeEventListener('pointerup', onUp)
    handle.removeEventListener('pointercancel', onCancel)
    window.removeEventListener('keydown', onKey, true)
    row.classList.remove('drag-row')
    row.style.removeProperty('translate')
    clearMarks(family)
    if (drop && moving && to !== null) onDrop(to)
  }
  const onUp = () => end(true)
  const onCancel = () => end(false)
  const onKey = (key: KeyboardEvent) => {
    if (key.key !== 'Escape') return
    key.preventDefault()
    key.stopPropagation()
    end(false)
  }
  handle.setPointerCapture(event.pointerId)
  handle.addEventListener('pointermove', onMove)
  handle.addEventListener('pointerup', onUp)
  handle.addEventListener('pointercancel', onCancel)
  window.addEventListener('keydown', onKey, true)
}

/** Marks where the row would go, and answers it. */
function markPlace(family: HTMLElement | null, row: HTMLElement, clientY: number): DropPlace | null {
  clearMarks(family)
  const list = nearestList(family, clientY)
  if (list === null) return null
  const others = [...list.children].filter((each) => each !== row)
  const next = others.findIndex((each) => {
    const { top, height } = each.getBoundingClientRect()
    return clientY < top + height / 2
  })
  const at = next < 0 ? others.length : next
  const target = others[at]
  if (target !== undefined) target.classList.add('drop-before')
  else list.classList.add('drop-end')
  return { list: list.dataset.dropList ?? '', at }
}

function nearestList(family: HTMLElement | null, clientY: number): HTMLElement | null {
  const lists = [...(family?.querySelectorAll<HTMLElement>('[data-drop-list]') ?? [])]
  const distance = (list: HTMLElement) => {
    const { top, bottom } = list.getBoundingClientRect()
    return Math.max(top - clientY, clientY - bottom, 0)
  }
  return lists.reduce<HTMLElement | null>(
    (best, list) => (best === null || distance(list) < distance(best) ? list : best),
    null,
  )
}

function clearMarks(family: HTMLElement | null): void {
  for (const marked of family?.querySelectorAll('.drop-before, .drop-end') ?? [])
    marked.classList.remove('drop-before', 'drop-end')
}
