import { type LastSeen, lastSeenKey, type SeenElement } from './last-seen'

/** Which batch this is, where in it we are, and what is to be done. */
const wanted = '.strip-back, .strip-title, .run-steps, .eye-title, .step-heading'

/** Keeps the words of the step in hand as they stand on the page, for the moment in which the next start reads the batch. */
export function keepLastSeen(page: Document, storage: () => Pick<Storage, 'setItem'>, batch: string): void {
  const run = page.querySelector('.run')
  if (run?.querySelector('#step-heading') == null) return
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
