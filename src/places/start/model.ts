import { batch, computed, effect, type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import { createFormat } from '../../app/format'
import type { Refusal } from '../../app/refusals'
import type { StartRefusal } from '../../app/refusals/forms-start'
import type { Balance } from '../../batch/catalogue'
import type { Intention } from '../../batch/intention'
import { dateIsoOf } from '../../batch/iso-of'
import { productDensity } from '../../batch/product-density'
import type { Micrograms } from '../../trade/mass'
import type { QuantityRefusal } from '../../trade/units'
import { type Choice, noChoice, readChoice } from './choice'
import { type House, houseOf, revisionOf } from './house'
import { ambientRefusal, areWrong, checksOf } from './instruments'
import { batchCode, nextNumber, shortName } from './number'
import { type SetUp, setUpOf } from './set-up'
import { settleCards } from './settle'
import { readSize, sizeText, workOutSize } from './size'
import type { SettleCard } from './ways'

export type FieldRefusal = Refusal | StartRefusal | QuantityRefusal

export interface StartModel {
  /** False until draft and catalogue are read. */
  readonly ready: ReadonlySignal<boolean>
  readonly house: ReadonlySignal<House | null>
  readonly choice: ReadonlySignal<Choice>
  readonly change: (part: Partial<Choice> | ((choice: Choice) => Choice)) => void
  /** As the field shows it: what was typed, else the usual size. */
  readonly sizeShown: ReadonlySignal<string>
  readonly sizeUg: ReadonlySignal<Micrograms | null>
  readonly sizeRefusal: ReadonlySignal<FieldRefusal | null>
  /** g/mL, by which a size typed as a volume is a mass; null where the formula states none. */
  readonly density: ReadonlySignal<number | null>
  readonly setUp: ReadonlySignal<SetUp | null>
  readonly cards: ReadonlySignal<readonly SettleCard[]>
  /** What was typed wrongly elsewhere than in the size, by where it stands. */
  readonly wrong: ReadonlySignal<readonly string[]>
  readonly readyToOpen: ReadonlySignal<boolean>
  readonly opening: ReadonlySignal<boolean>
  readonly refusal: ReadonlySignal<Refusal | null>
  readonly open: () => Promise<void>
  readonly dispose: () => void
}

/** Everything about one batch before it is opened; what is half-chosen is kept as a draft of its formula. */
export function createStartModel(app: App, formulaId: string): StartModel {
  const choice = signal<Choice>(noChoice)
  const draftRead = signal(false)
  const onHand = signal<ReadonlyMap<string, Micrograms> | null>(null)
  const sum = signal<{ readonly text: string; readonly result: Awaited<ReturnType<typeof workOutSize>> } | null>(null)
  const opening = signal(false)
  const refusal = signal<Refusal | null>(null)
  const key = `start:${formulaId}`
  const today = computed(() => dateIsoOf(app.nowMs.value, app.clock.offsetMinutes()))
  const house = computed(() => houseOf(app, formulaId, onHand.value, today.value))
  const revision = computed(() => (house.value ? revisionOf(house.value.formula, choice.value) : undefined))
  const usual = computed(() => revision.value?.usualSizeUg)
  const density = computed(() => (revision.value ? productDensity(revision.value) : null))
  const sizeShown = computed(() => {
    if (choice.value.size !== null || usual.value === undefined) return choice.value.size ?? ''
    return sizeText(usual.value, choice.value.unit).replace('.', app.settings.decimalMark.value)
  })
  /** What a sum or a volume is worked out from. */
  const sumKey = (text: string) => `${text} ${choice.value.unit} ${density.value}`
  const typed = computed(() => readSize(sizeShown.value, choice.value.unit))
  const size = computed(() => {
    const read = typed.value
    if (read.ok !== 'wait') return read
    return sum.value?.text === sumKey(read.text) ? sum.value.result : null
  })
  const setUp = computed(() => {
    // The house is shown at its usual size while the size is being typed.
    const sizeUg = size.value?.ok ? size.value.value : usual.value
    return house.value && sizeUg ? setUpOf(choice.value, sizeUg, house.value) : null
  })
  const sizeRefusal = computed((): FieldRefusal | null => {
    if (size.value && !size.value.ok) return size.value.refusal
    const plan = setUp.value?.plan
    if (!plan || plan.ok || !setUp.value) return null
    return tooLittle(setUp.value) ?? plan.refusal
  })
  const cards = computed(() => {
    if (!setUp.value || !house.value || sizeRefusal.value) return []
    return settleCards({ setUp: setUp.value, house: house.value, format: createFormat(app.settings.decimalMark.value) })
  })
  const wrong = computed(() => wrongPlaces(choice.value, setUp.value, house.value?.balances ?? []))
  const readyToOpen = computed(
    () =>
      setUp.value !== null &&
      size.value?.ok === true &&
      !sizeRefusal.value &&
      cards.value.length === 0 &&
      wrong.value.length === 0,
  )
  const stops = [
    effect(() => {
      const read = typed.value
      if (read.ok !== 'wait') return
      const text = sumKey(read.text)
      void workOutSize(read.text, choice.value.unit, density.value).then((result) => {
        sum.value = { text, result }
      })
    }),
    effect(() => {
      const text = JSON.stringify(choice.value)
      if (draftRead.value && !opening.value) void app.drafts.write(key, choice.value === noChoice ? null : text)
    }),
  ]
  void app.drafts.read(key).then((draft) =>
    batch(() => {
      choice.value = readChoice(draft)
      draftRead.value = true
    }),
  )
  void app.catalogue.onHand().then((stock) => {
    onHand.value = stock
  })

  async function open(): Promise<void> {
    const [now, from] = [setUp.value, house.value]
    if (!readyToOpen.value || opening.value || !now || !from) return
    // This tap is the one that browsers want before they give sound and a screen that stays on.
    app.alarm.unlock()
    app.awake.keep()
    opening.value = true
    const number = await nextNumber(app.batches, from.formula, app.clock)
    const named = {
      id: app.ids.next(),
      code: batchCode(from.formula, number),
      shortName: shortName(from.formula, number),
    }
    const preflight = now.revision.preflight.map((text) => ({ text, done: choice.value.list.includes(text) }))
    const answer = await app.batches.start({ do: 'open', header: { ...now.header, ...named }, preflight }, [
      ...checksOf(choice.value, from.balances),
      ...taresOf(now),
    ])
    if ('refusal' in answer) {
      refusal.value = answer.refusal
      opening.value = false
      return
    }
    await app.drafts.write(key, null)
    app.go({ place: 'run', batch: answer.id })
  }

  return {
    ready: computed(() => draftRead.value && app.catalogue.loaded.value),
    house,
    choice,
    change: (part) => {
      choice.value = typeof part === 'function' ? part(choice.value) : { ...choice.value, ...part }
    },
    sizeShown,
    sizeUg: computed(() => (size.value?.ok ? size.value.value : null)),
    sizeRefusal,
    density,
    setUp,
    cards,
    wrong,
    readyToOpen,
    opening,
    refusal,
    open,
    dispose: () => {
      for (const stop of stops) stop()
    },
  }
}

/** The line that would round to nothing, and the size at which none does. */
function tooLittle({ plan, header }: SetUp): StartRefusal | null {
  if (plan.ok || plan.refusal.code !== 'TARGET_ROUNDS_TO_ZERO') return null
  const lines = header.revision.phases.flatMap((phase) => phase.lines)
  const balanceOf = (line: string) => {
    const id = header.balanceOfLine.find((each) => each.line === line)?.balance
    return header.balances.find((balance) => balance.id === id)
  }
  const sizes = lines.map(({ id, amount }) =>
    amount.kind === 'fraction' ? Math.ceil((balanceOf(id)?.stepUg ?? 0) / 2 / amount.fraction) : 0,
  )
  const { id } = plan.refusal
  const materialId = lines.find((each) => each.id === id)?.materialId
  return {
    code: 'START_TOO_LITTLE',
    name: header.materials.find((material) => material.id === materialId)?.name ?? id,
    balance: balanceOf(id)?.name ?? 'the balance',
    sizeUg: Math.max(...sizes),
  }
}

const taresOf = ({ header }: SetUp): readonly Intention[] =>
  header.vessels.flatMap(({ id, tareUg, standsIn }) =>
    tareUg === undefined ? [] : [{ do: 'tare' as const, vessel: id, tareUg, ...(standsIn ? { standsIn } : {}) }],
  )

function wrongPlaces(choice: Choice, setUp: SetUp | null, balances: readonly Balance[]): readonly string[] {
  const vessels = setUp?.vessels.some(({ tareRefusal, capacityRefusal }) => tareRefusal || capacityRefusal)
  const checks = areWrong(choice, balances) || ambientRefusal(choice) !== null
  return [...(vessels ? ['the vessels'] : []), ...(checks ? ['the checks'] : [])]
}
