import './make-up.css'
import { useState } from 'preact/hooks'
import type { Format } from '../../../app/format'
import { makeUpOf } from '../../../batch/make-up'
import { type MakeUpRow, makeUpRows, type Stands } from '../../../batch/make-up-rows'
import type { KindOf } from '../../../batch/step'
import { Button } from '../../../parts/button'
import { Mark } from '../../../parts/mark'
import { useStep } from './use-step'

/** How many lines are shown at first: what is outside its limits, then the water, then the rest. */
const most = 4

/** Composition as made before the water goes in and after, against the limits of each line. */
export function MakeUpTable({ step }: { step: KindOf<'make-up'> }) {
  const tools = useStep(step)
  const { state, format } = tools
  const [whole, setWhole] = useState(false)
  const gross = tools.mass('gross')
  const net = tools.mass('net')
  const makeup = makeUpOf(state, step.vessel, step.line, gross.kind === 'number' ? gross.value : undefined)
  if (!makeup.possible) return null
  const addUg = net.kind === 'number' ? net.value : makeup.proposedUg
  const all = makeUpRows(state, makeup, step.line, addUg)
  const rows = whole ? all : [...all].sort((a, b) => weight(b, step.line) - weight(a, step.line)).slice(0, most)
  const out = all.filter((row) => row.is !== 'within').length
  return (
    <div class="make-up-made">
      <table class="make-up-table">
        <caption>As made, in %: {out === 0 ? 'every line is inside after this' : `${out} outside after this`}</caption>
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col">before → after</th>
            <th scope="col">limits</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.line}>
              <th scope="row">{row.name}</th>
              <td>
                {bare(row.before, format, row.after)} → <b>{bare(row.after, format)}</b> <Outside is={row.is} />
              </td>
              <td class="make-up-limit">{limitWords(row, format)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {all.length > most && (
        <Button
          kind="plain"
          icon="list"
          label={whole ? 'Fewer lines' : `All ${all.length} lines`}
          expanded={whole}
          onPress={() => setWhole(!whole)}
        />
      )}
    </div>
  )
}

function Outside({ is }: { is: Stands }) {
  if (is === 'within') return null
  return (
    <span class="make-up-out">
      <Mark kind="over" size={18} /> {is}
    </span>
  )
}

const weight = (row: MakeUpRow, water: string): number =>
  (row.is === 'within' ? 0 : 4) + (row.line === water ? 2 : 0) + (row.was === 'within' ? 0 : 1)

/** Under 1 % a third decimal tells a limit from its line. */
const bare = (fraction: number, format: Format, small = fraction): string =>
  format.number(fraction * 100, small < 0.01 ? 3 : 2)

function limitWords({ low, high, from }: MakeUpRow, format: Format): string {
  if (from === 'none') return 'none stated'
  if (low === 0 && high === 1) return 'the rest'
  return low === 0 ? `at most ${bare(high, format)}` : `${bare(low, format, high)}–${bare(high, format)}`
}
