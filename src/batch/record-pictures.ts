import { entriesOf, type Stamp, type Struck } from './record-entries'
import type { BatchState } from './state'

/** A picture as the record names it; its bytes stand in their own stream. */
export interface PictureRow extends Stamp {
  readonly picture: string
  readonly caption: string
  readonly step?: string
  readonly struck?: Struck
}

export const pictureRows = (state: BatchState, initialsOf: (id: string) => string): readonly PictureRow[] =>
  entriesOf(state, 'pictured', initialsOf).map(({ event, ...row }) => {
    const { picture, caption, step } = event.body
    return { ...row, picture, caption, ...(step === undefined ? {} : { step }) }
  })
