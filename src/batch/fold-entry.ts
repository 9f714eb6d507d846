import { applyMass } from './fold-mass'
import { applyProcess } from './fold-process'
import type { BatchEvent } from './kinds'
import type { BatchState } from './state'

/** What one entry that counts does to the state. `atMs` is when it happened. */
export function applyEntry(state: BatchState, event: BatchEvent, atMs: number): void {
  switch (event.kind) {
    case 'weighed':
    case 'adjusted':
    case 'charged':
    case 'transferred':
    case 'discarded':
    case 'spilled':
    case 'lot-corrected':
    case 'unplanned-added':
    case 'evaporated':
    case 'made-up':
    case 'sampled':
    case 'filled':
      applyMass(state, event, atMs)
      return
    case 'opened':
    case 'struck':
    case 'noted':
    case 'pictured':
    case 'signed':
    case 'device-signed':
    case 'clock-jumped':
    case 'healed':
    case 'bath-changed':
    case 'surroundings-told':
    case 'stability-planned':
    case 'cycle-counted':
      return
    default:
      applyProcess(state, event, atMs)
  }
}
