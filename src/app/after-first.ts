export { createBells } from './bells'
export { keepCatalogue } from './keep-catalogue'
export { decideHeld, finishedHeads } from './other-batches'
