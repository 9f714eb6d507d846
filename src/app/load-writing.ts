/**
 * The rules of writing (decide, remedies, seal) are fetched right after the first screen is up: showing the bench and
 * the step in hand does without them. Asked for again, the answer is the same module.
 */
export const loadWriting = () => import('./writing')
