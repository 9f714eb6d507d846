import { accept, refuse } from '../trade/result'
import { absurdTemperature } from './absurd'
import { msOf } from './instant'
import type { Context, Intention } from './intention'
import type { BatchDraft, Surroundings } from './kinds'
import type { BatchRefusal, Decision } from './refusal'
import type { BatchState } from './state'

type HeatIntention = Extract<Intention, { do: 'read-temperature' | 'change-bath' | 'tell-surroundings' }>

type Asks<D extends HeatIntention['do']> = Extract<HeatIntention, { do: D }>

/** Rules of the thermometer, and of what a vessel stands in. */
export function decideHeat(state: BatchState, intention: HeatIntention, context: Context): Decision {
  switch (intention.do) {
    case 'read-temperature':
      return readTemperature(state, intention, context)
    case 'change-bath': {
      const { vessel, what } = intention
      const refusal = strangeVessel(state, vessel)
      if (refusal) return refuse(refusal)
      return what.trim() === ''
        ? refuse({ code: 'REASON_MISSING' })
        : one({ kind: 'bath-changed', body: { vessel, what: what.trim() } })
    }
    case 'tell-surroundings':
      return tellSurroundings(state, intention.about)
  }
}

function readTemperature(state: BatchState, intention: Asks<'read-temperature'>, context: Context): Decision {
  const { vessel, temperatureC, step, source, late } = intention
  const refusal = strangeVessel(state, vessel) ?? absurdTemperature(temperatureC)
  if (refusal) return refuse(refusal)
  const draft: BatchDraft = {
    kind: 'temperature-read',
    body: { vessel, temperatureC, ...(step === undefined ? {} : { step }) },
    ...(source === undefined ? {} : { source }),
  }
  if (late === undefined) return accept([draft])
  const readAtMs = msOf(late.occurredAt)
  if (!(readAtMs <= context.nowMs && readAtMs >= state.openedAtMs)) return refuse({ code: 'MOMENT_BAD' })
  if (late.reason.trim() === '') return refuse({ code: 'REASON_MISSING' })
  const text = `A temperature entered late: ${late.reason.trim()}`
  return accept([
    { ...draft, occurredAt: late.occurredAt },
    { kind: 'noted', body: { text, ...(step === undefined ? {} : { step }) } },
  ])
}

function tellSurroundings(state: BatchState, about: Surroundings): Decision {
  const refusal = about.of === 'room' ? null : strangeVessel(state, about.vessel)
  if (refusal) return refuse(refusal)
  switch (about.of) {
    case 'room':
      return within(about.temperatureC, coldestRoomC, warmestRoomC) ?? one({ kind: 'surroundings-told', body: about })
    case 'bath':
      return within(about.temperatureC, coldestBathC, hottestBathC) ?? one({ kind: 'surroundings-told', body: about })
    case 'plate':
      return (
        (about.setC === undefined ? null : within(about.setC, warmestRoomC, hottestPlateC)) ??
        one({ kind: 'surroundings-told', body: about })
      )
  }
}

/** A cold store and a summer under a roof; ice with salt and an oil bath; °C. Past them a figure is a slip. */
const [coldestRoomC, warmestRoomC] = [0, 45]
const [coldestBathC, hottestBathC] = [-20, 150]
const hottestPlateC = 250

const within = (temperatureC: number, leastC: number, mostC: number): Decision | null =>
  temperatureC >= leastC && temperatureC <= mostC
    ? null
    : refuse({ code: 'SURROUNDINGS_ABSURD', temperatureC, leastC, mostC })

const strangeVessel = (state: BatchState, vessel: string): BatchRefusal | null =>
  state.plan.vessels.has(vessel) ? null : { code: 'UNKNOWN_VESSEL_HERE', vessel }

const one = (draft: BatchDraft): Decision => accept([draft])
