export { decide } from '../batch/decide'
export { onHandOf } from './on-hand'
export { saveDocument } from './save-document'
export { sealAll } from './writer'
