/** Under this name is kept what a run last showed of its step in hand; erasing everything takes it along. */
export const lastSeenKey = 'pannikin.last-seen'

/** An element as it was seen: its tag, its classes, and what stood in it. */
export type SeenElement = readonly [tag: string, className: string, ...inside: (string | SeenElement)[]]

/** What the step is and asks for: no reading and no mark of an entry, which could be others by now; nothing to press. */
export interface LastSeen {
  readonly batch: string
  /** On which side the hand is (`data-hand`). */
  readonly hand: string
  readonly run: SeenElement
}

/**
 * Shows the step that was last in hand in the place where the app will show it, while that reads where the batch stands.
 * False where the address is not that of the batch that was seen last.
 */
export function showLast(page: Document, storage: () => Pick<Storage, 'getItem'>): boolean {
  const shown = ([tag, className, ...inside]: SeenElement): Element => {
    const made = page.createElement(tag)
    made.className = className
    if (tag === 'h1') made.id = 'step-heading'
    made.append(...inside.map((each) => (typeof each === 'string' ? each : shown(each))))
    return made
  }
  try {
    const { batch, hand, run } = JSON.parse(storage().getItem(lastSeenKey) ?? '') as LastSeen
    if (page.location.hash.split('/')[2] !== batch) return false
    page.documentElement.dataset.hand = hand
    page.getElementById('app')?.replaceChildren(shown(run))
    return true
  } catch {
    // Nothing was kept, or it may not be read: the app shows itself when it is there.
    return false
  }
}
