import { addressOf } from './routes'

/** Parts of a batch's address that are no jar: every other one is a jar's id. */
export const jarParts = { stability: 'stability', labels: 'labels', today: 'today' } as const

/** In the place of a batch: the jars of all of them. */
export const allBatches = 'pulls'

export const stabilityAddress = (batch: string): string =>
  addressOf({ place: 'records', batch, part: jarParts.stability })

export const jarAddress = (batch: string, jar: string): string => addressOf({ place: 'records', batch, part: jar })
