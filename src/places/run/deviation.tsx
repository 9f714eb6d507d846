import './deviation.css'
import { useState } from 'preact/hooks'
import { useFormat } from '../../app/format'
import { whyNot } from '../../app/refusals/ways-on'
import type { BatchState } from '../../batch/state'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { classes } from '../../parts/classes'
import { ReasonChips } from '../../parts/reason-chips'
import { useHardwareKeys } from '../../parts/use-hardware-keys'
import { type DeviationPanel, panelOf, plainReason } from './deviation-model'
import { useOffers } from './deviation-offers'
import { Proof } from './deviation-proof'
import { reasonsFor } from './deviation-reasons'
import { TakeOut } from './deviation-take-out'
import { WhatHappened } from './deviation-what'
import { actOfWay, consequenceWords, orderWords, questionWords } from './deviation-words'
import { Messages } from './messages'
import { useRun } from './run-context'
import { wayLine, wayTitle, wordsFor } from './way-words'

/** Opens beside the number: what happened under a vermilion lip, where to act under a cobalt one. */
export function Deviation() {
  const run = useRun()
  const panel = panelOf(run, useOffers(run))
  const [inFull, setInFull] = useState(false)
  if (panel === null) return null
  return (
    <>
      <WhatHappened panel={panel} onProof={() => setInFull(true)} />
      <WaysOn panel={panel} />
      {inFull && <Proof panel={panel} onClose={() => setInFull(false)} />}
    </>
  )
}

function WaysOn({ panel }: { panel: DeviationPanel }) {
  const run = useRun()
  const format = useFormat()
  const { state } = run.handle.view.value
  const { currency } = run.app.settings.value.value
  const { chosen } = panel
  const [asksWhy, setAsksWhy] = useState(false)
  const choose = (index: number): boolean => {
    const way = panel.ways[index]
    if (way === undefined) return false
    run.type(way.feasible ? 'way' : 'asked', way.kind)
    return true
  }
  useHardwareKeys(
    { onKey: (key) => (isTakingOut(panel) ? false : choose(Number(key) - 1)), onPaste: () => {} },
    run.sheet.value === null,
  )
  const act = actOfWay(panel, state, run.draft.value, run.reckoner, format)
  return (
    <Card lip="action" label="Ways on" class="ways">
      <h2 class="ways-title">{questionWords(panel)}</h2>
      <p class="ways-say">{consequenceWords(panel, state, format)}</p>
      <Messages gates={[]} undo={false} />
      <ol class={listClass(panel)}>
        {panel.ways.map((way, index) => (
          <li key={way.kind}>
            <button
              type="button"
              class="way"
              aria-pressed={way === chosen}
              aria-disabled={!way.feasible || undefined}
              onClick={() => choose(index)}
            >
              <span class="way-number">{index + 1}</span>
              <span class="way-words">
                <span class="way-title">{wayTitle(way, state, format)}</span>
                {!panel.deviation.inCup && <span class="way-line">{wayLine(way, panel, state, format, currency)}</span>}
              </span>
            </button>
          </li>
        ))}
      </ol>
      <Why panel={panel} state={state} />
      {panel.deviation.inCup && chosen && chosen.kind !== 'take-out' && (
        <p class="way-line">{wayLine(chosen, panel, state, format, currency)}</p>
      )}
      {chosen?.kind === 'take-out' && <TakeOut byUg={panel.deviation.byUg} />}
      {(asksWhy || panel.needsReason) && (
        <ReasonChips
          label="Why"
          options={reasonsFor(panel)}
          other="In your own words"
          value={panel.reason}
          onChange={(reason) => run.type('reason', reason)}
        />
      )}
      <div class="ways-act">
        {!panel.needsReason && chosen?.kind !== 'take-out' && (
          <Button
            label="Why"
            sub={panel.reason || plainReason(panel.deviation)}
            expanded={asksWhy}
            onPress={() => setAsksWhy(!asksWhy)}
            class="ways-reason"
          />
        )}
        <Button
          kind={act.closed ? 'closed' : 'filled'}
          size="primary"
          label={act.label}
          sub={act.sub}
          onPress={() => void run.settle(chosen?.kind)}
          full
        />
      </div>
    </Card>
  )
}

/** Of a way that cannot be gone and was tapped, what binds; else why the chosen one stands where it does. */
function Why({ panel, state }: { panel: DeviationPanel; state: BatchState }) {
  const asked = useRun().draft.value.fields.asked
  const closed = panel.ways.find((way) => way.kind === asked && !way.feasible)?.offer?.why
  const format = useFormat()
  const words = closed ? whyNot(closed, wordsFor(state, format)).full : orderWords(panel.chosen?.offer?.reason)
  return words === '' ? null : (
    <p class="ways-why" role="status">
      {words}
    </p>
  )
}

/** Six cards have to fit where five stand at ease. */
const listClass = ({ deviation, ways }: DeviationPanel): string =>
  classes('ways-list', deviation.inCup && 'ways-cup', ways.length > 5 && 'ways-many')

/** While a mass is typed for the cup, digits are digits. */
const isTakingOut = (panel: DeviationPanel): boolean => panel.chosen?.kind === 'take-out'
