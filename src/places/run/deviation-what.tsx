import { useFormat } from '../../app/format'
import type { PlannedLine } from '../../batch/plan'
import type { BatchState, DeviationState } from '../../batch/state'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { HeroNumber, StateLine } from '../../parts/hero'
import { Horn } from '../../parts/horn'
import { StepHeading } from './cards/step-heading'
import { Change } from './deviation-change'
import type { DeviationPanel } from './deviation-model'
import { hornBleedPx } from './narrow'
import { personById } from './people'
import { useRun } from './run-context'
import { nameIn } from './way-words'

/** The number that went over, its band, and what the chosen way makes of the finished product. */
export function WhatHappened({ panel, onProof }: { panel: DeviationPanel; onProof: () => void }) {
  const run = useRun()
  const format = useFormat()
  const { state } = run.handle.view.value
  const weighing = run.weighing.value
  const planned = run.planned.value
  if (weighing === null || planned === null) return null
  const { deviation } = panel
  const mass = (massUg: number) => format.mass(massUg, weighing.stepUg)
  const isReading = deviation.cause === undefined
  const isOver = deviation.direction === 'over'
  const shownUg = isReading ? (state.steps.get(planned.id)?.netUg ?? 0) : deviation.byUg
  return (
    <Card lip="over" labelledBy="step-heading" class="eye what">
      <header class="eye-title">
        <StepHeading text={nameIn(state, deviation.line)} />
        {isReading && <Inci line={weighing.planned} />}
        <p class="eye-inci">{recordedWords(state, panel, run, format.time)}</p>
      </header>
      <div class="what-number">
        <HeroNumber text={mass(shownUg)} unit="g" size="deviation" />
        <StateLine state={isOver ? 'over' : 'to-go'} text={standing(deviation, mass(deviation.byUg))} />
        {isReading && (
          <p class="reading-target">
            Target <b>{mass(weighing.targetUg)}</b> g, good from <b>{mass(weighing.lowUg)}</b> to{' '}
            <b>{mass(weighing.highUg)}</b>
          </p>
        )}
      </div>
      {isReading && (
        <Horn
          netUg={shownUg}
          targetUg={weighing.targetUg}
          lowUg={weighing.lowUg}
          highUg={weighing.highUg}
          format={mass}
          state={isOver ? 'over' : 'to-go'}
          bleedPx={hornBleedPx()}
          heightPx={48}
        />
      )}
      <Change panel={panel} />
      <div class="what-foot">
        <Button
          icon="rotate-ccw"
          label={strikeWords(deviation)}
          onPress={() => void run.strike(deviation.entry, 'mistyped')}
          full
        />
        {panel.chosen?.offer && <Button icon="list" label="In full" onPress={onProof} />}
      </div>
    </Card>
  )
}

function strikeWords({ cause }: DeviationState): string {
  if (cause === 'lot') return 'Not that lot? Strike the correction out'
  return cause === 'forgotten' ? 'Not passed yet? Strike it out' : 'Mistyped? Strike out, type again'
}

function Inci({ line: { material } }: { line: PlannedLine }) {
  const inci = material.inci.map(({ name }) => name).join(', ')
  return inci.toLowerCase() === material.name.toLowerCase() ? null : <p class="eye-under">{inci}</p>
}

/** What the number is: past its band, or not in the formula, never weighed, gone. */
function standing({ cause, direction }: DeviationState, by: string): string {
  switch (cause) {
    case 'foreign':
      return 'not in the formula'
    case 'forgotten':
      return 'missing: its step has passed'
    case 'loss':
      return 'of it is gone'
    case 'lot':
      return 'from a lot not to be used'
    default:
      return `${by} g ${direction === 'over' ? 'over' : 'short'}`
  }
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
