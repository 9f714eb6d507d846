import type { Values } from '../../app/forms/field-spec'
import type { DraftItem, FormulaDraft } from './draft'
import { readShare, type ShareWorld } from './share-text'

/** What the lines come to so far. Fields that cannot be read yet count nothing. */
export interface Total {
  /** Of the fixed shares and what is expected as needed. */
  readonly stated: number
  /** Left for the q.s. line; null where there is none. */
  readonly qs: number | null
  /** Lines whose share cannot be read yet, and so counts nothing. */
  readonly unread: number
  readonly byPhase: ReadonlyMap<string, number>
}

export function totalOf({ phases }: FormulaDraft, world: ShareWorld): Total {
  const shareOf = rememberedShares(world)
  const sums = phases.map(({ id, lines }) => [id, sum(lines.map((line) => shareOf(line) ?? 0))] as const)
  const stated = sum(sums.map(([, share]) => share))
  const filler = phases.find(({ lines }) => lines.some(({ values }) => values['amount.kind'] === 'qs'))
  const qs = filler ? tidy(1 - stated) : null
  const byPhase = new Map(sums.map(([id, share]) => [id, id === filler?.id ? tidy(share + (qs ?? 0)) : share] as const))
  const unread = phases.flatMap(({ lines }) => lines).filter((line) => shareOf(line) === null).length
  return { stated, qs, unread, byPhase }
}

/** How a total stands to the whole: 100 %, less, or more. q.s. makes the whole unless the others already pass it. */
export type Standing = { readonly kind: 'whole' } | { readonly kind: 'missing' | 'too-much'; readonly share: number }

export function standingOf({ stated, qs }: Total): Standing {
  if (qs !== null) return qs > 0 ? { kind: 'whole' } : { kind: 'too-much', share: tidy(-qs) }
  const off = tidy(1 - stated)
  if (Math.abs(off) <= 1e-9) return { kind: 'whole' }
  return off > 0 ? { kind: 'missing', share: off } : { kind: 'too-much', share: tidy(-off) }
}

/** What becomes of the q.s. line at planning. `heldBack` has the adjusters' part in it; `rest` is null where no step takes it. */
export interface QsShares {
  readonly portions: number
  readonly heldBack: number
  readonly adjusters: number
  readonly rest: number | null
}

/** As `portionQs` will share it out, before it is rounded to a balance. */
export function qsShares(draft: FormulaDraft, { id, values }: DraftItem, world: ShareWorld): QsShares {
  const shareIn = (text: string | undefined): number | null => {
    const read = readShare(text ?? '', world)
    return read.ok ? read.value : null
  }
  const qs = totalOf(draft, world).qs ?? 0
  const parts = draft.steps
    .filter((step) => step.values.kind === 'weigh' && step.values.line === id)
    .map((step) => shareIn(step.values.portion))
  const portions = sum(parts.map((part) => part ?? 0))
  const adjusters = sum(
    draft.phases.flatMap(({ lines }) =>
      lines.map((line) => (line.values['amount.kind'] === 'as-needed' ? (shareOf(line.values, world) ?? 0) : 0)),
    ),
  )
  const left = tidy(qs - portions)
  if (parts.length > 0 && !parts.includes(null)) return { portions, heldBack: left, adjusters, rest: null }
  const stated = shareIn(values['amount.heldBack'])
  const wanted = tidy((stated ?? usuallyHeldBack) + adjusters)
  const heldBack = stated === null && wanted > left ? 0 : wanted
  return { portions, heldBack, adjusters: heldBack === 0 ? 0 : adjusters, rest: tidy(left - heldBack) }
}

/** Where a formula states nothing. */
const usuallyHeldBack = 0.03

/** The share that a line's texts state: none of a q.s. line, null where it cannot be read yet. */
export function shareOf(values: Values, world: ShareWorld): number | null {
  if (values['amount.kind'] === 'qs') return 0
  const read = readShare(textOf(values), world)
  return read.ok ? read.value : null
}

/** A line is read once for as long as neither it nor what it is read with changes. */
const remembered = new WeakMap<ShareWorld, WeakMap<DraftItem, number | null>>()

function rememberedShares(world: ShareWorld): (line: DraftItem) => number | null {
  const known = remembered.get(world) ?? new WeakMap<DraftItem, number | null>()
  remembered.set(world, known)
  return (line) => {
    const before = known.get(line)
    if (before !== undefined) return before
    const share = shareOf(line.values, world)
    known.set(line, share)
    return share
  }
}

const textOf = (values: Values): string =>
  values[values['amount.kind'] === 'as-needed' ? 'amount.expected' : 'amount.fraction'] ?? ''

const sum = (shares: readonly number[]): number => tidy(shares.reduce((all, share) => all + share, 0))

/** Binary noise off. */
const tidy = (value: number): number => Number(value.toFixed(12))
