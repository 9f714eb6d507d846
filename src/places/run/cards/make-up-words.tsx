import type { MakeUp } from '../../../batch/make-up'
import type { BatchState } from '../../../batch/state'

export interface MakeUpWords {
  readonly makeup: MakeUp
  readonly state: BatchState
  readonly mass: (massUg: number) => string
  readonly water: string
  readonly vesselName: string
  readonly grossUg: number | undefined
}

/** What the balance should show: before by the books, then once the water is in. */
export function factWords({ makeup, mass, vesselName }: MakeUpWords): string {
  if (makeup.grossUg === undefined || makeup.fullGrossUg === undefined)
    return `${vesselName} has no tare, so what evaporated cannot be read.`
  const full = makeup.proposedUg > 0 ? ` It should read ${mass(makeup.fullGrossUg)} once that is in.` : ''
  return `By the books ${mass(makeup.grossUg)} with its tare of ${mass(makeup.tareUg ?? 0)}.${full}`
}

/** A loss of more than this part of the batch is rather a slip than steam. */
const muchLost = 0.1

/** Why so much: what is gone, what was held back, what is too small or too much; and the pH after it. */
export function whyWords({ makeup, state, mass, water, grossUg }: MakeUpWords) {
  const { lossUg, toAddUg, proposedUg, balance, roomUg } = makeup
  const lost = lossUg > 0 ? `${mass(lossUg)} has gone as ${water.toLowerCase()}.` : ''
  const much =
    lossUg > muchLost * state.totalUg ? ' That is a lot: read the balance once more, and think of a spill.' : ''
  const none = grossUg !== undefined && lossUg === 0 && makeup.aboveUg === 0 ? 'No loss that the balance can tell.' : ''
  const held = state.heldBackUg > 0 ? `${mass(state.heldBackUg)} was held back.` : ''
  const small = toAddUg > 0 && proposedUg === 0 ? `${balance?.name ?? 'The balance'} cannot show what is missing.` : ''
  const full =
    roomUg !== null && toAddUg > roomUg ? `The vessel takes ${mass(roomUg)}, not the ${mass(toAddUg)} missing.` : ''
  const again = state.header.revision.specification.some(({ property }) => property === 'pH')
    ? 'Read the pH again after this: water moves it.'
    : ''
  return (
    <>
      {(lost || none) && (
        <b>
          {lost}
          {much}
          {none}
        </b>
      )}{' '}
      {[held, small, full, again].filter((part) => part !== '').join(' ')}
    </>
  )
}
