export { decide } from '../batch/decide'
export { sealAll } from './writer'
