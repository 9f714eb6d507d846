import { ago } from '../../../app/ago'
import type { Format } from '../../../app/format'
import type { AdjustAdvice, Adjusting } from '../../../batch/adjusting'
import type { HazardKind } from '../../../batch/catalogue'
import type { PhMeter } from '../../../batch/ph-meter'
import type { DoseReason, StopReason } from '../../../trade/acidity'

/** A bold beginning, and what follows from it. */
export interface Words {
  readonly lead: string
  readonly text: string
}

type Dose = Extract<AdjustAdvice, { do: 'add' }>

/** Why this much and no more, in one line. */
export function whyWords(dose: Dose, adjusting: Adjusting, format: Format): Words {
  const mass = format.massWithUnit(dose.doseUg, adjusting.line.balance.stepUg)
  const last = lastStepWords(adjusting, format)
  const edge = format.number(farEdge(adjusting))
  const reasons: Readonly<Record<DoseReason, string>> = {
    first: 'how strongly this batch holds its pH is not known yet. A little finds out.',
    middle: `${last} This should land mid-window, well short of ${edge}.`,
    careful: `${last} More could pass ${edge}, should the batch hold its pH less from here on.`,
    earlier: `${adjusting.earlier ?? 'an earlier batch'} shows how this formula takes it. It should land mid-window.`,
    capped: 'it is the largest portion that the formula allows.',
    least: 'it is one step of the balance; less would do.',
  }
  return { lead: `Why ${mass}:`, text: reasons[dose.why] }
}

/** "the last 0.20 g took 0.26 off." */
function lastStepWords({ readings, line }: Adjusting, format: Format): string {
  const counted = readings.filter(({ leftOut }) => leftOut === undefined)
  const last = counted.at(-1)
  const before = last && counted.findLast(({ addedUg }) => addedUg < last.addedUg)
  if (last === undefined || before === undefined) return ''
  const mass = format.massWithUnit(last.addedUg - before.addedUg, line.balance.stepUg)
  const moved = Math.round((last.ph - before.ph) * 100) / 100
  if (moved === 0) return `the last ${mass} changed nothing yet.`
  const by = format.number(Math.abs(moved), 2)
  return moved < 0 ? `the last ${mass} took ${by} off.` : `the last ${mass} put ${by} on.`
}

/** What a stop says: whether all is well, and what to do where it is not. */
export function stopWords(why: StopReason, adjusting: Adjusting, format: Format): Words & { readonly good: boolean } {
  const edge = format.number(farEdge(adjusting))
  const isAcid = adjusting.kind === 'acid'
  switch (why) {
    case 'in-window':
      return { good: true, lead: 'in the window', text: balanceWords(adjusting, format) }
    case 'near-far-edge':
      return { good: true, lead: `close to ${edge}: leave it`, text: balanceWords(adjusting, format) }
    case 'past-far-edge':
      return {
        good: false,
        lead: `past ${edge}`,
        text: `What is in cannot come out. Add a little ${isAcid ? 'base' : 'acid'} as unplanned, or leave it and say why.`,
      }
    case 'wrong-adjuster':
      return {
        good: false,
        lead: `past ${edge} already`,
        text: `It needs ${isAcid ? 'a base' : 'an acid'}; ${adjusting.line.material.name} is ${isAcid ? 'an acid' : 'a base'} and would take it further off.`,
      }
  }
}

/** What is in against what was taken off the water for it at planning. */
export function balanceWords({ addedUg, expectedUg, line }: Adjusting, format: Format): string {
  const mass = (massUg: number): string => format.massWithUnit(massUg, line.balance.stepUg)
  const byUg = addedUg - expectedUg
  if (Math.abs(byUg) < line.balance.stepUg) return `${mass(addedUg)} is in, as expected.`
  return byUg < 0
    ? `${mass(addedUg)} is in, ${mass(-byUg)} less than expected: make-up puts water in its place.`
    : `${mass(addedUg)} is in, ${mass(byUg)} more than expected: make-up takes that much less water.`
}

/** Two readings that cannot both be right. */
export function againWords({ contradiction }: Extract<AdjustAdvice, { do: 'read-again' }>, format: Format): string {
  const [before, after] = [contradiction.before.ph, contradiction.after.ph].map((ph) => format.number(ph, 2))
  return contradiction.how === 'differ'
    ? `${before}, then ${after} with nothing added between. Rinse it, wait, read again.`
    : `${before}, then ${after}: the wrong way for what went in. Stir, wait, read again.`
}

/** What speaks against the meter; null where nothing does. */
export function meterWords(meter: PhMeter | null, format: Format): string | null {
  if (meter === null) return 'No calibration of the pH meter is recorded with this batch.'
  const parts = [
    ...(meter.worn ? [`has a slope of ${format.number(meter.slopePercent)} %, not 95–105 %`] : []),
    ...(meter.old ? [`was calibrated ${ago(meter.ageMs)}`] : []),
  ]
  return parts.length === 0 ? null : `The pH meter ${parts.join(', and ')}: calibrate it.`
}

/** How the adjuster goes in, where that can hurt. */
export function pouringWords(kind: HazardKind | undefined): string | null {
  if (kind === 'caustic') return 'Slowly into the stirred product. Never water onto caustic: it spits.'
  return kind === 'acid' ? 'A little at a time into the stirred product, never the product into the acid.' : null
}

const farEdge = ({ kind, check }: Adjusting): number =>
  (kind === 'acid' ? check.limits?.min : check.limits?.max) ?? Number.NaN
