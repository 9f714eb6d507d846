import { accept, refuse } from '../trade/result'
import type { DeviceSigned } from './device-signature'
import type { Checked, Context } from './intention'
import { type BatchDraft, isKnown } from './kinds'
import type { PlannedStep } from './plan'
import { isDeviceSigned } from './record-device'
import type { BatchRefusal, Decision } from './refusal'
import type { Signature, Signatures } from './signature'
import type { BatchState } from './state'

/** What a closed batch is signed as; the second is another person's than the first. */
export const performed = 'performed'
export const checked = 'checked'

/** Why what a second person is to look at at this step cannot be written yet. */
export function notChecked(
  state: BatchState,
  planned: PlannedStep,
  intention: Checked,
  context: Context,
): BatchRefusal | null {
  if (planned.step.secondPerson !== true || !state.header.people.checks) return null
  const { checkedBy, signature } = intention
  if (checkedBy === undefined) return { code: 'SECOND_PERSON_MISSING' }
  if (checkedBy === context.by) return { code: 'SAME_PERSON' }
  if (signature === undefined)
    return context.signsWithPin?.(checkedBy) === true ? { code: 'SIGNATURE_MISSING', intention } : null
  return signature.person === checkedBy && isWhole(signature) ? null : { code: 'SIGNATURE_BAD' }
}

/** The signature of who checked, right behind the entry that was looked at. */
export const signedAt = ({ step, signature }: Checked, entry: string): readonly BatchDraft[] =>
  signature === undefined ? [] : [{ kind: 'signed', body: { ...signature, step, entry }, namesHead: true }]

export const signedDrafts = (signatures: readonly Signature[]): readonly BatchDraft[] =>
  signatures.map((signature) => ({ kind: 'signed', body: signature, namesHead: true }))

export function sign(state: BatchState, signatures: Signatures): Decision {
  const unfit = unfitSignatures(state, signatures)
  return unfit ? refuse(unfit) : accept(signedDrafts(signatures.by))
}

/** The tablet signs an end that is there, once with one key. */
export function signHead(state: BatchState, signed: DeviceSigned): Decision {
  if (!state.entries.some(({ event }) => event.hash === signed.head)) return refuse({ code: 'NO_SUCH_ENTRY' })
  const isSigned = state.entries.some(
    ({ event }) => isDeviceSigned(event) && event.body.head === signed.head && event.body.key === signed.key,
  )
  return accept(isSigned ? [] : [{ kind: 'device-signed', body: signed }])
}

/** Nobody signs what they did not see, and nobody checks themselves. */
export function unfitSignatures(state: BatchState, { by, seen }: Signatures): BatchRefusal | null {
  if (!isLast(state, seen)) return { code: 'CHANGED_MEANWHILE' }
  if (by.length === 0 || !by.every(isWhole)) return { code: 'SIGNATURE_BAD' }
  const before = state.entries.flatMap(({ event }) =>
    isKnown(event) && event.kind === 'signed' && event.body.step === undefined ? [event.body] : [],
  )
  const performers = [...before, ...by].filter(({ meaning }) => meaning === performed).map(({ person }) => person)
  return by.some(({ meaning, person }) => meaning === checked && performers.includes(person))
    ? { code: 'SAME_PERSON' }
    : null
}

/** What the tablet signs by itself says nothing that a person has to see. */
const isLast = (state: BatchState, seen: string | null): boolean =>
  state.entries.findLast(({ event }) => event.hash === seen || !isDeviceSigned(event))?.event.hash === seen

const isWhole = ({ person, meaning, insteadOf, reason }: Signature): boolean =>
  person !== '' &&
  meaning.trim() !== '' &&
  (insteadOf === undefined || (insteadOf !== person && (reason ?? '').trim() !== ''))
