import 'fake-indexeddb/auto'
import { expect, test } from 'vitest'
import { createBatches } from '../../../../src/app/batches'
import { createFormat } from '../../../../src/app/format'
import { wordsOf } from '../../../../src/batch/entry-words'
import { recordOf } from '../../../../src/batch/record'
import { seal } from '../../../../src/batch/seal'
import { advance, emptyTip } from '../../../../src/batch/tip'
import { verifyTrail } from '../../../../src/batch/verify-trail'
import { manualClock } from '../../../../src/devices/clock/manual-clock'
import { countingIds } from '../../../../src/devices/ids/counting-ids'
import { sayOf } from '../../../../src/places/records/say'
import { batchesText } from '../../../house/demonstration/files'
import { morningMs, openTestBench } from '../../../support/batch'
import { lotionHeader } from '../../../support/formulas'
import { newTablet, openPage } from '../../store/support'

test('[E88] an entry of a newer version goes through import, screen and export whole; the batch is read-only', async () => {
  const bench = openTestBench(lotionHeader())
  bench.weigh('a-water', '348.85')
  const tip = bench.events.reduce(advance, emptyTip)
  const place = { stream: 'batch:one', replica: 'tablet', id: 'id-newer', at: '2026-11-24T10:40:00Z', by: 'person-rk' }
  const newer = seal({ kind: 'sung-over', body: { tune: 3, verses: ['a', { b: null }] } }, tip, place)
  const file = batchesText([{ ...bench, events: [...bench.events, newer], state: bench.state, nowMs: bench.nowMs }])

  const { store } = await openPage(newTablet())
  const archive = await store.archive()
  expect(await archive.apply(new Blob([file]))).toMatchObject({
    ok: true,
    value: { fresh: bench.events.length + 1 },
  })

  const writer = { replica: () => store.log.replica, clock: manualClock(morningMs), ids: countingIds() }
  const handle = await createBatches({ log: store.log, writer }).open('one')
  if (!handle) throw new Error('the batch is not here')
  const { state } = handle.view.value
  const record = recordOf(state)
  expect(record.unknownKinds).toEqual(['sung-over'])
  const last = record.trail.at(-1)
  expect(last).toMatchObject({ known: false, event: newer })
  expect(last && wordsOf(last.event, sayOf(record, createFormat('.')))).toContain('sung-over')
  expect(record.verification).toMatchObject({ intact: true, entries: bench.events.length + 1 })
  expect(verifyTrail([...bench.events, { ...newer, body: { tune: 4 } }])).toMatchObject({
    brokenAt: bench.events.length + 1,
    kind: 'sung-over',
  })
  for (const act of [
    { do: 'note', text: 'on with it' },
    { do: 'park', reason: 'lunch' },
  ] as const)
    expect(await handle.intend(act)).toMatchObject({ ok: false, refusal: { code: 'READ_ONLY', kinds: ['sung-over'] } })

  const written = await archive.write(['batch:one'], '2026-11-24T11:00:00Z')
  const [header = '', ...lines] = written.ok ? (await written.value.file.text()).split('\n') : []
  expect(lines).toEqual(file.split('\n').slice(1))
  expect(JSON.parse(header)).toMatchObject({ events: bench.events.length + 1 })
})
