import type { Format } from '../../app/format'
import { unfitWords } from '../../app/sign/key-words'
import { instrumentWords, kindOfRemedy, type Say } from '../../batch/entry-phrases'
import { wordsOf } from '../../batch/entry-words'
import type { Finding } from '../../batch/record-review'
import type { Doubt } from '../../batch/state'
import { deviationWords } from './deviation-words'
import { limitsWords } from './limits-words'
import { allowedText } from './paper-limits'
import { shownValue } from './shown-value'

type OfKind<K extends Finding['kind']> = Extract<Finding, { kind: K }>

/** What a finding is about, in two or three words, and what there is to see. */
export function findingWords(finding: Finding, format: Format, say: Say): readonly [what: string, more: string] {
  switch (finding.kind) {
    case 'chain':
      return ['Chain broken', `Entry ${finding.verification.brokenAt} does not follow what stands before it.`]
    case 'device':
      return ['Signature does not fit', unfitWords(finding.row)]
    case 'unknown':
      return ['Not understood', `Entries of a newer version of the app: ${finding.kinds.join(', ')}.`]
    case 'doubt':
      return ['Does not add up', doubtWords(finding.doubt, say)]
    case 'deviation':
      return [`Deviation ${finding.deviation.number}`, deviationSaid(finding, format)]
    case 'result': {
      const { label, check } = finding.result
      return [
        'Out of limits',
        `${label}: ${shownValue(finding.result, format)}, asked for ${limitsWords(check, format)}.`,
      ]
    }
    case 'limit': {
      const { limit, asMade } = finding.limit
      const figure = asMade === undefined ? '' : ` ${format.percent(asMade)} as made,`
      return ['Outside a limit', `${limit.name}:${figure} ${allowedText(limit, format)}.`]
    }
    case 'unexplained':
      return [
        'Mass unexplained',
        `${format.massWithUnit(Math.abs(finding.massUg))}; the formula lets ${format.massWithUnit(finding.limitUg)} pass.`,
      ]
    case 'lot':
      return [`Lot ${finding.why}`, `${finding.lot.code}, ${finding.lot.material}${lotDay(finding, format)}.`]
    case 'missing':
      return ['Check missing', `${finding.check.label} was not read.`]
    case 'second':
      return ['Second person', `${say.step(finding.step)}: ${finding.why}.`]
    case 'gate': {
      const { detail, reason, by, atMs } = finding.gate
      return ['Went on all the same', `${say.step(finding.step)}, ${format.time(atMs)} ${by}: ${detail} (${reason}).`]
    }
    case 'skipped':
      return ['Step skipped', `${say.step(finding.row.planned.id)}: ${finding.row.finished?.note ?? 'no reason'}.`]
    case 'kept':
      return ['Kept at the start', `${finding.kept.about}: ${finding.kept.reason}.`]
    case 'instrument':
      return ['Instrument not good', `${instrumentWords(finding.check.check, say)}.`]
    case 'timer': {
      const { label, plannedMs, lateMs = 0 } = finding.timer
      const off = `${format.duration(lateMs)} ${lateMs < 0 ? 'early' : 'late'}`
      return [
        lateMs < 0 ? 'Timer cut short' : 'Bell stopped late',
        `${label}: ${format.duration(plannedMs)} planned, ${off}.`,
      ]
    }
    case 'entry':
      return entrySaid(finding, format, say)
  }
}

function entrySaid({ what, row }: OfKind<'entry'>, format: Format, say: Say): readonly [string, string] {
  const words = wordsOf(row.event, say)
  switch (what) {
    case 'not planned':
      return ['Not in the plan', words]
    case 'lost':
      return ['Lost', words]
    case 'clock':
      return ['Tablet', `${words} ${format.dateTime(row.atMs)}.`]
    case 'struck':
      return ['Struck out', `${words} ${row.struck?.by ?? ''}: ${row.struck?.reason ?? ''}.`]
    case 'late':
      return [
        'Written late',
        `${words} Happened ${format.dateTime(row.atMs)}, written ${format.dateTime(row.writtenAtMs ?? 0)}.`,
      ]
  }
}

function deviationSaid({ deviation }: OfKind<'deviation'>, format: Format): string {
  const { settled, stepUg, byUg } = deviation
  const what = deviationWords(deviation, format.massWithUnit(byUg, stepUg))
  if (settled === null) return `${what}: no way on has been chosen.`
  const { how, reason } = settled
  return `${what}: ${how === 'taken out' || how === 'struck out' ? how : kindOfRemedy(how)}, ${reason}.`
}

function lotDay({ lot, why }: OfKind<'lot'>, format: Format): string {
  const day = why === 'expired' ? lot.expires : why === 'to be tested again' ? lot.retestOn : undefined
  return day === undefined ? '' : `: ${format.date(day)}, taken from ${format.date(lot.usedOn ?? day)}`
}

function doubtWords(doubt: Doubt, say: Say): string {
  switch (doubt.code) {
    case 'WEIGHED_TWICE':
      return `${say.step(doubt.step)} was weighed twice by people who did not see each other's entry.`
    case 'STRUCK_UNKNOWN':
      return 'Something was struck out that is not here.'
    case 'UNKNOWN_STEP':
      return `${say.entry(doubt.entry) ?? 'An entry'}: its step is not in the plan.`
    case 'DOES_NOT_ADD_UP':
      return `${say.entry(doubt.entry) ?? 'An entry'} does not fit what stands before it.`
  }
}
