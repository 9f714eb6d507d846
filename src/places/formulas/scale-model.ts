import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import { startWithSize } from '../../app/start-with-size'
import type { Formula, Revision } from '../../batch/formula'
import { dateIsoOf } from '../../batch/iso-of'
import { productDensity } from '../../batch/product-density'
import { largestByStock, type ScaledBatch, scaledBatch } from '../../batch/scaled-batch'
import { usableStock } from '../../batch/usable-stock'
import { type Micrograms, massUnits, roundUpToStep } from '../../trade/mass'
import { type NumberRefusal, readDecimal, readMass } from '../../trade/number-text'
import { accept, type Result } from '../../trade/result'
import { type Filling, sizeForUnits, unitsOf } from '../../trade/scale-up'
import { massOfVolume } from '../../trade/units'

/** As typed. */
export interface ScaleTexts {
  readonly by: 'size' | 'units'
  readonly size: string
  /** Empty: as many as the stock gives. */
  readonly count: string
  readonly fill: string
  readonly fillUnit: 'mL' | 'g'
  readonly density: string
  /** Percent. */
  readonly loss: string
}

export type ScaleField = 'size' | 'count' | 'fill' | 'density' | 'loss'

export interface ScaleModel {
  /** False until stock and draft are read. */
  readonly ready: ReadonlySignal<boolean>
  readonly texts: ReadonlySignal<ScaleTexts>
  readonly change: (part: Partial<ScaleTexts>) => void
  /** By field, of those that count now. */
  readonly refusals: ReadonlySignal<Readonly<Partial<Record<ScaleField, NumberRefusal>>>>
  readonly scaled: ReadonlySignal<ScaledBatch | null>
  /** Whole units that it fills, where units are asked about. */
  readonly units: ReadonlySignal<number | null>
  readonly start: () => Promise<void>
}

/** Another size of one revision, or as many units as the stock gives; what is typed is kept as a draft. */
export function createScale(app: App, formula: Formula, revision: Revision): ScaleModel {
  const key = `scale:${formula.id}`
  const texts = signal(firstTexts(revision, app.settings.decimalMark.value))
  const onHand = signal<ReadonlyMap<string, Micrograms> | null>(null)
  const ready = signal(false)
  const stock = computed(() => {
    const today = dateIsoOf(app.clock.nowMs(), app.clock.offsetMinutes())
    return usableStock(app.catalogue.lots.value.values(), onHand.value ?? new Map(), today, assayAssumed(revision))
  })
  const fields = computed(() => readFields(texts.value))
  const filling = computed((): Filling | null => {
    const { fill, density, loss } = fields.value
    if (!fill.ok || !loss.ok || !density.ok) return null
    const unitUg = texts.value.fillUnit === 'g' ? Math.round(fill.value * 1e6) : massOfVolume(fill.value, density.value)
    return { unitUg, lossFraction: loss.value / 100 }
  })
  const sizeUg = computed((): Micrograms | null => {
    if (texts.value.by === 'size') return fields.value.size.ok ? fields.value.size.value : null
    if (filling.value === null || !fields.value.count.ok) return null
    const largestUg = largestByStock(revision, stock.value)?.sizeUg ?? 0
    const units = fields.value.count.value ?? unitsOf(largestUg, filling.value)
    if (units <= 0) return null
    const leastUg = sizeForUnits(units, filling.value)
    const roundUg = roundUpToStep(leastUg, leastUg >= massUnits.kg ? massUnits.g : massUnits.g / 10)
    return roundUg > largestUg && leastUg <= largestUg ? leastUg : roundUg
  })
  const scaled = computed(() =>
    ready.value ? scaledBatch(revision, app.catalogue.materials.value, stock.value, sizeUg.value ?? 0) : null,
  )
  void Promise.all([app.drafts.read(key), app.catalogue.onHand()]).then(([draft, stocked]) => {
    texts.value = { ...texts.value, ...readTexts(draft) }
    onHand.value = stocked
    ready.value = true
  })
  return {
    ready,
    texts,
    scaled,
    refusals: computed(() => refusalsOf(fields.value, texts.value)),
    units: computed(() =>
      texts.value.by === 'units' && filling.value && sizeUg.value !== null
        ? unitsOf(sizeUg.value, filling.value)
        : null,
    ),
    change: (part) => {
      texts.value = { ...texts.value, ...part }
      void app.drafts.write(key, JSON.stringify(texts.value))
    },
    start: async () => {
      if (sizeUg.value === null) return
      await app.drafts.write(key, null)
      await startWithSize(app, { formula: formula.id, revision: revision.number, sizeUg: sizeUg.value })
    },
  }
}

/** The usual size, 200 mL a unit, the density and loss that the revision states; an unknown density is left open. */
function firstTexts(revision: Revision, mark: '.' | ','): ScaleTexts {
  const density = productDensity(revision)
  const shown = (value: number) => String(Number(value.toPrecision(6))).replace('.', mark)
  return {
    by: 'size',
    size: shown(revision.usualSizeUg / 1e6),
    count: '',
    fill: '200',
    fillUnit: 'mL',
    density: density === null ? '' : shown(density),
    loss: shown((revision.lossAllowance ?? 0) * 100),
  }
}

function readFields({ size, count, fill, fillUnit, density, loss }: ScaleTexts) {
  const above = { negative: false, zero: false } as const
  return {
    size: readMass(size, above),
    count: count.trim() === '' ? accept(null) : readDecimal(count, { ...above, max: 1e6 }),
    fill: readDecimal(fill, { ...above, max: 1e5 }),
    density: fillUnit === 'g' ? accept(1) : readDecimal(density, { ...above, max: 25 }),
    loss: loss.trim() === '' ? accept(0) : readDecimal(loss, { negative: false, max: 90 }),
  }
}

type Fields = ReturnType<typeof readFields>

function refusalsOf(fields: Fields, { by }: ScaleTexts): Readonly<Partial<Record<ScaleField, NumberRefusal>>> {
  const counted: readonly ScaleField[] = by === 'size' ? ['size'] : ['count', 'fill', 'density', 'loss']
  return Object.fromEntries(
    counted.flatMap((field) => {
      const read: Result<number | null, NumberRefusal> = fields[field]
      return read.ok ? [] : [[field, read.refusal]]
    }),
  )
}

const assayAssumed = (revision: Revision): ReadonlyMap<string, number> =>
  new Map(
    revision.phases.flatMap(({ lines }) =>
      lines.flatMap((line) => (line.assayAssumed === undefined ? [] : [[line.materialId, line.assayAssumed] as const])),
    ),
  )

/** Whatever of a kept draft still reads as text. */
function readTexts(draft: string | null): Partial<ScaleTexts> {
  if (draft === null) return {}
  try {
    const read: unknown = JSON.parse(draft)
    if (typeof read !== 'object' || read === null) return {}
    const kept = Object.entries(read).filter(([key, value]) => typeof value === 'string' && key in blank)
    const { by, fillUnit, ...typed }: Record<string, string> = Object.fromEntries(kept)
    return { ...typed, by: by === 'units' ? 'units' : 'size', fillUnit: fillUnit === 'g' ? 'g' : 'mL' }
  } catch {
    return {}
  }
}

const blank: ScaleTexts = { by: 'size', size: '', count: '', fill: '', fillUnit: 'mL', density: '', loss: '' }
