import { createFormat } from '../../app/format'
import { writeSeparated } from '../../app/import/table/write-text'
import { commonStep } from '../../batch/entry-phrases'
import { wordsOf } from '../../batch/entry-words'
import { isoOf } from '../../batch/iso-of'
import { isKnown } from '../../batch/kinds'
import type { BatchRecord } from '../../batch/record'
import type { TrailRow } from '../../batch/record-trail'
import { sayOf } from './say'

const headings = [
  'No.',
  'Written',
  'Happened (UTC)',
  'By',
  'Kind',
  'What',
  'Source',
  'As typed or sent',
  'Instrument',
  'Lot',
  'Net g',
  'Value',
  'Unit',
  'Struck out',
  'Hash',
]

/** Every entry of a batch as a table, struck ones too: one row an entry, figures in the decimal mark asked for. */
export function entriesCsv(record: BatchRecord, mark: '.' | ','): Promise<string> {
  const format = createFormat(mark)
  const say = sayOf(record, format)
  const rows = record.trail.map((row) => {
    const { netUg, lot, value, unit } = figuresOf(row)
    return [
      String(row.number),
      row.event.at,
      isoOf(row.atMs, 0),
      row.by,
      row.event.kind,
      wordsOf(row.event, say),
      row.source.kind,
      row.source.raw ?? '',
      row.device ?? '',
      lot === undefined ? '' : say.lot(lot),
      netUg === undefined ? '' : format.mass(netUg, commonStep(netUg)),
      value === undefined ? '' : plain(value, mark),
      unit ?? '',
      row.struck ? `${isoOf(row.struck.atMs, 0)} ${row.struck.by}: ${row.struck.reason}` : '',
      row.event.hash,
    ]
  })
  return writeSeparated([headings, ...rows], mark)
}

interface Figures {
  readonly netUg?: number | undefined
  readonly lot?: string | undefined
  readonly value?: number | undefined
  readonly unit?: string | undefined
}

function figuresOf({ event }: TrailRow): Figures {
  if (!isKnown(event)) return {}
  switch (event.kind) {
    case 'weighed':
    case 'adjusted':
    case 'made-up':
    case 'unplanned-added':
      return { netUg: event.body.netUg, lot: event.body.lot }
    case 'sampled':
    case 'filled':
    case 'evaporated':
    case 'spilled':
      return { netUg: event.body.massUg }
    case 'temperature-read':
      return { value: event.body.temperatureC, unit: '°C' }
    case 'measured':
      return { value: event.body.value, unit: event.body.unit }
    default:
      return {}
  }
}

/** As a spreadsheet reads a number: no thousands, and the sign that its keyboard has. */
const plain = (value: number, mark: '.' | ','): string => String(Number(value.toPrecision(12))).replace('.', mark)
