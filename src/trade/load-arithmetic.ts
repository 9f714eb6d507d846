import { once } from './once'

/** The arithmetic library, fetched once, when the first sum or unit needs it. */
export const loadArithmetic = once(() => import('./arithmetic'))
