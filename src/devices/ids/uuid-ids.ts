import { uuidv7 } from 'uuidv7'
import type { Ids } from '../../ports/ids'

/** Ids that sort by the time they were made, and never repeat or go back within a page. */
export const uuidIds = (): Ids => ({ next: uuidv7 })
