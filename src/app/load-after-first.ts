/** What the app keeps going once its first screen is up: bells, the catalogue, other batches. */
export const loadAfterFirst = () => import('./after-first')
