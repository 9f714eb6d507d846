import { latePart } from './late-part'

/** A plot with the library that draws it: both are fetched when the first one is shown. */
export const Plot = latePart(() => import('../parts/plot'), 'Plot')
