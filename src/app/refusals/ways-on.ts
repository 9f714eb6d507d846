import { capital } from '../../batch/capital'
import type { RemedyRefusal } from '../../trade/remedy'
import type { Allowing, Asking } from '../../trade/remedy-model'

/** What the sentences need beside the refusal: what lines, limits and vessels are called, and how figures are written. */
export interface WayWords {
  readonly nameOf: (id: string) => string
  readonly mass: (massUg: number) => string
  readonly percent: (fraction: number) => string
}

/** Why a way on cannot be gone: the sentence that names what binds, and its short form for a line of a card. */
export interface WhyNot {
  readonly full: string
  readonly short: string
}

export function whyNot(refusal: RemedyRefusal, { nameOf, mass, percent }: WayWords): WhyNot {
  switch (refusal.code) {
    case 'VESSEL_TOO_SMALL':
      return both(`needs ${mass(refusal.neededUg)}, the vessel holds ${mass(refusal.capacityUg)}.`)
    case 'SIDE_VESSEL_TOO_SMALL':
      return both(
        `${nameOf(refusal.id)} would have ${mass(refusal.neededUg)} in it and holds ${mass(refusal.capacityUg)}.`,
      )
    case 'STIRRER_TOO_SMALL':
      return both(`needs ${mass(refusal.neededUg)}, the stirrer moves ${mass(refusal.mostUg)}.`)
    case 'STOCK_TOO_SHORT':
      return {
        full: `Needs ${mass(refusal.neededUg)} more ${nameOf(refusal.id)}, ${mass(refusal.stockUg)} is left.`,
        short: `${nameOf(refusal.id)} runs out.`,
      }
    case 'LINE_LOCKED':
      return {
        full: `Needs ${mass(refusal.neededUg)} more ${nameOf(refusal.id)}; its step is closed.`,
        short: `needs ${mass(refusal.neededUg)} ${nameOf(refusal.id)}, too late.`,
      }
    case 'LINE_NOT_IN_FORMULA':
      return {
        full: 'What was added is not in the formula, so that no multiple of the formula holds it.',
        short: 'what was added is not in the formula.',
      }
    case 'NO_QS_LINE':
      return both('no line makes up to 100 %.')
    case 'QS_ALREADY_PAST':
      return {
        full: `${mass(refusal.pastUg)} too much ${nameOf(refusal.id)} is in already: there is not so much left to give way.`,
        short: `too little ${nameOf(refusal.id)} is left to give way.`,
      }
    case 'RANGE_CONTRADICTORY':
      return {
        full: `The range of ${nameOf(refusal.id)} has its least above its most.`,
        short: `${nameOf(refusal.id)}: its least is above its most.`,
      }
    case 'LINES_CONFLICT':
      return {
        full: `${asks(refusal.needs, mass(refusal.neededUg), nameOf)}, but ${allows(refusal.allows, nameOf)} ${mass(refusal.allowedUg)}.`,
        short: conflictInShort(refusal.allows, mass(refusal.neededUg), mass(refusal.allowedUg), nameOf),
      }
    case 'MINIMUMS_EXCEED_TOTAL':
      return {
        full: `At ${mass(refusal.totalUg)} the least of all lines comes to ${mass(refusal.minimumsUg)}${because(': too much is in of', refusal.ids, nameOf)}.`,
        short: 'the least of all lines is too much already.',
      }
    case 'MAXIMUMS_BELOW_TOTAL':
      return {
        full:
          refusal.allLocked && refusal.needs.limit === 'high'
            ? `There is too much ${nameOf(refusal.needs.id)}, and nothing may be added to dilute it: all lines are closed.`
            : `Needs ${mass(refusal.totalUg)}; all lines at their most come to ${mass(refusal.maximumsUg)}${because(', for want of', refusal.ids, nameOf)}.`,
        short: refusal.allLocked
          ? 'nothing may be added: all lines are closed.'
          : 'too little can still go in to dilute it.',
      }
    case 'CLOSURE_CONFLICT':
      return {
        full: `The least of the lines asks for a batch of at least ${mass(refusal.neededUg)}, their most allows at most ${mass(refusal.allowedUg)}.`,
        short: 'the limits of the lines contradict each other.',
      }
    case 'COST_UNKNOWN':
      return {
        full: `What ${nameOf(refusal.id)} costs is not known. Enter its price first.`,
        short: `the price of ${nameOf(refusal.id)} is not known.`,
      }
    case 'SHARED_LIMITS_CONFLICT':
      return sharedConflict(refusal, { nameOf, mass, percent })
    case 'NOT_SOLVED':
      return {
        full: 'No way was found that balances can show within these limits. Choose another one.',
        short: 'balances cannot show it within the limits.',
      }
  }
}

type SharedConflict = Extract<RemedyRefusal, { code: 'SHARED_LIMITS_CONFLICT' }>

function sharedConflict({ ids, at, limit, allLocked }: SharedConflict, { nameOf, percent }: WayWords): WhyNot {
  const [name = '', ...others] = ids.map(nameOf)
  if (at === undefined || limit === undefined)
    return {
      full: `With what is in, these limits over several lines cannot be kept: ${listed(ids, nameOf)}.`,
      short: `the limit of ${name} cannot be kept.`,
    }
  const stays = `${name} would stay ${at > limit ? 'above' : 'below'} ${percent(limit)}`
  const beside = others.length > 0 ? ` if ${listed(ids.slice(1), nameOf)} is kept` : ''
  return {
    full: `${capital(stays)}${beside}${allLocked ? ', and nothing may be added to dilute it: all lines are closed' : ''}.`,
    short: `${stays}.`,
  }
}

/** Short enough for a card as it is; a sentence begins with a capital. */
const both = (words: string): WhyNot => ({ full: capital(words), short: words })

function asks(limit: Asking, size: string, nameOf: WayWords['nameOf']): string {
  switch (limit.limit) {
    case 'contents':
      return `In already is ${size}`
    case 'least-total':
      return `The batch is to come to ${size}`
    case 'stirs-least':
      return `The stirrer reaches nothing below ${size}`
    case 'high':
      return `To dilute ${nameOf(limit.id)} the batch must come to at least ${size}`
  }
}

function allows(limit: Allowing, nameOf: WayWords['nameOf']): string {
  switch (limit.limit) {
    case 'capacity':
      return 'the vessel holds'
    case 'stirs-most':
      return 'the stirrer moves at most'
    case 'locked':
      return `${nameOf(limit.id)} can no longer be added and allows at most`
    case 'stock':
      return `the ${nameOf(limit.id)} that is left allows at most`
  }
}

function conflictInShort(limit: Allowing, needed: string, allowed: string, nameOf: WayWords['nameOf']): string {
  switch (limit.limit) {
    case 'capacity':
      return `needs ${needed}, the vessel holds ${allowed}.`
    case 'stirs-most':
      return `needs ${needed}, the stirrer moves ${allowed}.`
    case 'locked':
      return `no more ${nameOf(limit.id)} can go in.`
    case 'stock':
      return `${nameOf(limit.id)} runs out.`
  }
}

const because = (joint: string, ids: readonly string[], nameOf: WayWords['nameOf']): string =>
  ids.length > 0 ? `${joint} ${listed(ids, nameOf)}` : ''

/** Three names at most, then how many more. */
function listed(ids: readonly string[], nameOf: WayWords['nameOf']): string {
  const names = ids.slice(0, 3).map(nameOf).join(', ')
  return ids.length > 3 ? `${names} and ${ids.length - 3} more` : names
}
