import type { ArchivePreview, KindCount, Meeting } from '../../ports/archive'
import type { EventLog } from '../../ports/event-log'
import { counted } from '../counted'

export function previewWords({ streams, fresh, same, conflicting }: ArchivePreview): string {
  const parts = [
    counted(streams.length, 'thing', 'things'),
    `${counted(fresh, 'entry', 'entries')} new here`,
    same > 0 ? `${same} here already` : '',
    conflicting > 0
      ? `${counted(conflicting, 'that differs from what is here and stays', 'that differ from what is here and stay')} out`
      : '',
  ]
  return `${parts.filter((part) => part !== '').join(', ')}.`
}

const kindNames: Readonly<Record<string, string>> = {
  batch: 'Batches',
  formula: 'Formulas',
  material: 'Materials',
  lot: 'Lots',
  person: 'People',
  balance: 'Balances',
  vessel: 'Vessels',
  template: 'Stability templates',
  picture: 'Pictures',
  device: 'Keys of tablets',
  settings: 'Preferences',
}

const kindOrder = Object.keys(kindNames)

const placeOf = (kind: string): number => (kind in kindNames ? kindOrder.indexOf(kind) : kindOrder.length)

/** The kinds as a person lists them; a kind of a newer version comes last, as it is called. */
export const kindRows = (kinds: readonly KindCount[]): readonly (KindCount & { readonly name: string })[] =>
  kinds
    .map((row) => ({ ...row, name: kindNames[row.kind] ?? row.kind }))
    .sort((one, other) => placeOf(one.kind) - placeOf(other.kind))

/** Something that is here and differs in the file, by its name, and what becomes of both. */
export interface MeetingRow {
  readonly name: string
  readonly becomes: string
}

export const meetingRows = (log: EventLog, meetings: readonly Meeting[]): Promise<readonly MeetingRow[]> =>
  Promise.all(
    meetings.map(async (meeting) => ({
      name: nameOf(meeting.stream, (await log.head(meeting.stream))?.summary),
      becomes: becomesOf(meeting),
    })),
  )

function becomesOf({ stream, how, fresh, staysOut, fileIsLast }: Meeting): string {
  if (how === 'conflict')
    return `${counted(staysOut, 'entry of the file stands', 'entries of the file stand')} where another one stands here. What is here stays; ${staysOut === 1 ? 'that one stays' : 'those stay'} out.`
  if (stream.startsWith('batch:'))
    return `It went on here and in the file. ${counted(fresh, 'entry comes', 'entries come')} in beside what is here; a line that was weighed in both counts twice, and the batch says so.`
  return fileIsLast
    ? 'It was changed here and in the file. The file has the later one, which counts from then on; the one here stays in the trail.'
    : 'It was changed here and in the file. The one here is the later one and goes on counting; the one of the file goes into the trail.'
}

function nameOf(stream: string, summary: unknown): string {
  if (stream.startsWith('settings:')) return 'Preferences of this tablet'
  const known = typeof summary === 'object' && summary !== null ? summary : {}
  const words = [
    'code' in known && typeof known.code === 'string' ? known.code : '',
    'name' in known && typeof known.name === 'string' ? known.name : '',
  ]
  return words.filter((word) => word !== '').join(', ') || stream
}
