import type { Hazards } from '../../../src/batch/catalogue.ts'

/** Warnings that several materials share. The sentences are those of a safety data sheet; the caution is the bench's own. */
export const finePowder: Hazards = {
  caution: 'Fine dust: mask on, extraction on',
  kind: 'dust',
  statements: ['May form combustible dust concentrations in air'],
  wear: ['mask', 'glasses'],
}

export const slipperyPowder: Hazards = {
  caution: 'Fine dust: mask on. Wipe spills dry: wet powder is slippery',
  kind: 'dust',
  statements: ['May form combustible dust concentrations in air'],
  wear: ['mask', 'glasses', 'gloves'],
}

export const waxForMelting: Hazards = {
  caution: 'Burns once melted: no flame, no hot wax down the sink',
  kind: 'hot',
  statements: ['Not classified; a burn hazard when molten'],
  wear: ['heat gloves', 'glasses'],
}

export const eyeIrritant: Hazards = {
  caution: 'Hurts eyes neat: glasses on',
  kind: 'other',
  statements: ['H318 Causes serious eye damage'],
  wear: ['glasses', 'gloves'],
}
