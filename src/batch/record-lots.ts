import type { Micrograms } from '../trade/mass'
import type { Lot } from './catalogue'
import type { BatchState } from './state'

/** A lot that went into the batch, as its label and papers say. Dates ISO. */
export interface LotRow {
  readonly id: string
  readonly code: string
  readonly material: string
  readonly supplier?: string
  readonly expires?: string
  readonly retestOn?: string
  /** Active matter, 0–1. */
  readonly assay?: number
  readonly status?: Lot['status']
  readonly usedUg: Micrograms
  /** The day it was taken from last, ISO date; absent where no entry names it. */
  readonly usedOn?: string
}

/** Every lot that mass was taken from, in the order of first use. `lots` of the catalogue know what was not planned. */
export function lotRows(state: BatchState, lots?: ReadonlyMap<string, Lot>): readonly LotRow[] {
  const own = new Map([...state.plan.lines.values()].flatMap((line) => line.lots.map((lot) => [lot.id, lot] as const)))
  const names = new Map(state.header.materials.map((material) => [material.id, material.name]))
  for (const { body } of state.unplanned.values()) if (body.materialId) names.set(body.materialId, body.name)
  const days = daysOfUse(state)
  return [...state.usedByLot].flatMap(([id, usedUg]) => {
    if (usedUg === 0) return []
    const lot = own.get(id) ?? lots?.get(id)
    if (lot === undefined) return [{ id, code: id, material: '', usedUg }]
    const usedOn = days.get(id)
    const { code, materialId, supplier, expires, retestOn, assay, status } = lot
    return [
      {
        id,
        code,
        material: names.get(materialId) ?? materialId,
        status,
        usedUg,
        ...(usedOn === undefined ? {} : { usedOn }),
        ...(supplier === undefined ? {} : { supplier }),
        ...(expires === undefined ? {} : { expires }),
        ...(retestOn === undefined ? {} : { retestOn }),
        ...(assay === undefined ? {} : { assay }),
      },
    ]
  })
}

function daysOfUse(state: BatchState): ReadonlyMap<string, string> {
  const days = new Map<string, string>()
  for (const { event, struck } of state.entries) {
    const { body } = event
    if (struck || typeof body !== 'object' || body === null || !('lot' in body)) continue
    if (typeof body.lot === 'string') days.set(body.lot, (event.occurredAt ?? event.at).slice(0, 10))
  }
  return days
}
