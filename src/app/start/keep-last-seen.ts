import { type LastSeen, lastSeenKey, type SeenElement } from './last-seen'

/** Which batch this is, where in it we are, and what is to be done. */
const wanted = '.strip-back, .strip-title, .run-steps, .eye-title, .step-heading'

type Keep = () => Pick<Storage, 'setItem'>

/** Keeps what a run shows now, and what it shows when the page is hidden. The answer ends that. */
export function keepSeen(page: Document, storage: Keep): () => void {
  const keep = (): void => keepNow(page, storage)
  const keepHidden = (): void => {
    if (page.visibilityState === 'hidden') keep()
  }
  keep()
  page.addEventListener('visibilitychange', keepHidden)
  return () => page.removeEventListener('visibilitychange', keepHidden)
}

function keepNow(page: Document, storage: Keep): void {
  const run = page.querySelector('.run')
  const batch = page.location.hash.split('/')[2]
  if (batch === undefined || run?.querySelector('#step-heading') == null) return
  const seen: LastSeen = { batch, hand: page.documentElement.dataset.hand ?? '', run: seenOf(run, false) }
  try {
    storage().setItem(lastSeenKey, JSON.stringify(seen))
  } catch {
    // Full or refused: the next start begins with an empty page.
  }
}

function seenOf(element: Element, isWanted: boolean): SeenElement {
  // A picture's room is kept, not the picture.
  if (element.tagName === 'svg') return ['span', 'seen-icon']
  const whole = isWanted || element.matches(wanted)
  const inside = [...element.childNodes].flatMap((each): (string | SeenElement)[] => {
    if (!(each instanceof Element)) return whole && each.textContent ? [each.textContent] : []
    return whole || each.matches(wanted) || each.querySelector(wanted) ? [seenOf(each, whole)] : []
  })
  // What can be pressed becomes a thing that is only looked at.
  const tag = /^(?:A|BUTTON)$/.test(element.tagName) ? 'span' : element.tagName.toLowerCase()
  return [tag, element.className, ...inside]
}
