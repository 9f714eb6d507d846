import type { Step } from './step'

/** Ids of what a pre-mix brings into a batch; no formula has such ids, since they hold the id of a line or step. */
export const premixMaterialId = (line: string): string => `premix:${line}`
export const premixVesselId = (line: string): string => `premix:${line}`
export const premixLotId = (line: string): string => `premix:${line}`
export const premixNoteId = (step: string): string => `premix:${step}`

export const isPremixNote = (step: string): boolean => step.startsWith('premix:')

/** The step in which a dilution is made, before anything is weighed from it. */
export const isPremixing = (step: Step): boolean => step.kind === 'note' && isPremixNote(step.id)
