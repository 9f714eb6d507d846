import { useFormat } from '../../app/format'
import type { BatchState } from '../../batch/state'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { HeroNumber, StateLine } from '../../parts/hero'
import { Horn } from '../../parts/horn'
import { StepHeading } from './cards/step-heading'
import type { DeviationPanel } from './deviation-model'
import { bare, limitWords, roomWords } from './deviation-words'
import { hornBleedPx } from './narrow'
import { personById } from './people'
import { useRun } from './run-context'

/** The number that went over, its band, and what the chosen way makes of the finished product. */
export function WhatHappened({ panel }: { panel: DeviationPanel }) {
  const run = useRun()
  const format = useFormat()
  const { state } = run.handle.view.value
  const weighing = run.weighing.value
  const planned = run.planned.value
  if (weighing === null || planned === null) return null
  const mass = (massUg: number) => format.mass(massUg, weighing.stepUg)
  const netUg = state.steps.get(planned.id)?.netUg ?? 0
  const { material } = weighing.planned
  const inci = material.inci.map(({ name }) => name).join(', ')
  const isOver = panel.deviation.direction === 'over'
  return (
    <Card lip="over" labelledBy="step-heading" class="eye what">
      <header class="eye-title">
        <StepHeading text={material.name} />
        {inci.toLowerCase() !== material.name.toLowerCase() && <p class="eye-under">{inci}</p>}
        <p class="eye-inci">{recordedWords(state, panel, run, format.time)}</p>
      </header>
      <div class="what-number">
        <HeroNumber text={mass(netUg)} unit="g" size="deviation" />
        <StateLine
          state={isOver ? 'over' : 'to-go'}
          text={`${mass(panel.deviation.byUg)} g ${isOver ? 'over' : 'short'}`}
        />
        <p class="reading-target">
          Target <b>{mass(weighing.targetUg)}</b> g, good from <b>{mass(weighing.lowUg)}</b> to{' '}
          <b>{mass(weighing.highUg)}</b>
        </p>
      </div>
      <Horn
        netUg={netUg}
        targetUg={weighing.targetUg}
        lowUg={weighing.lowUg}
        highUg={weighing.highUg}
        format={mass}
        state={isOver ? 'over' : 'to-go'}
        bleedPx={hornBleedPx()}
        heightPx={48}
      />
      <Change panel={panel} />
      <Button
        icon="rotate-ccw"
        label="Mistyped? Strike out, type again"
        onPress={() => void run.strike(panel.deviation.entry, 'mistyped')}
        full
      />
    </Card>
  )
}

function recordedWords(
  state: BatchState,
  panel: DeviationPanel,
  run: ReturnType<typeof useRun>,
  time: (atMs: number) => string,
): string {
  const entry = state.entries.find(({ event }) => event.id === panel.deviation.entry)
  if (entry === undefined) return ''
  const lotId = (entry.event.body as { readonly lot?: string }).lot
  const lot = run.planned.value?.line?.lots.find(({ id }) => id === lotId)
  const by = personById(state, run.app.catalogue.people.value, entry.event.by)
  const recorded = `recorded ${time(Date.parse(entry.event.at))} by ${by?.initials ?? entry.event.by}`
  return lot ? `lot ${lot.code}, ${recorded}` : recorded
}

/** Before → after of the lines that the chosen way changes or leaves outside, and of the batch. */
function Change({ panel }: { panel: DeviationPanel }) {
  const run = useRun()
  const format = useFormat()
  const offer = panel.chosen?.offer
  if (panel.chosen === null || offer === undefined) return null
  const { state } = run.handle.view.value
  const number = panel.ways.indexOf(panel.chosen) + 1
  const beforeUg = panel.consequences?.finishedUg ?? state.totalUg
  return (
    <table class="change">
      <caption>With choice {number}</caption>
      <tbody>
        {offer.rows.slice(0, 3).map((row) => (
          <tr key={row.line} class={row.breaks ? 'change-breaks' : undefined}>
            <th scope="row">{row.name}</th>
            <td>
              {bare(row.before, format)} → <b>{format.percent(row.after)}</b>
            </td>
            <td class="change-limit">{limitWords(row, format)}</td>
          </tr>
        ))}
        <tr>
          <th scope="row">Batch</th>
          <td>
            {format.mass(beforeUg)} → <b>{format.massWithUnit(offer.totalUg)}</b>
          </td>
          <td class="change-limit">{roomWords(state, panel, format)}</td>
        </tr>
      </tbody>
    </table>
  )
}
