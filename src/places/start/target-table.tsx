import './target-table.css'
import { Fragment } from 'preact'
import { useFormat } from '../../app/format'
import type { PlannedLine } from '../../batch/plan'
import type { StartProps } from './shared'
import type { SettleCard } from './ways'

/** Every line with its share, its target as its balance will show it, and its lots; what is to settle stands beside it. */
export const TargetTable = ({ model, setUp }: StartProps) => {
  const format = useFormat()
  const plan = setUp.plan.ok ? setUp.plan.value : null
  // While the size cannot be read the lines stay in sight, without masses.
  const sized = model.sizeUg.value !== null
  const lines = plan ? [...plan.lines.values()] : []
  const finestUg = Math.min(...lines.map(({ balance }) => balance.stepUg))
  const sum = (some: readonly PlannedLine[]) => some.reduce((total, { targetUg }) => total + targetUg, 0)
  const share = (some: readonly PlannedLine[]) => some.reduce((total, { fraction }) => total + fraction, 0)
  const percent = (fraction: number) => format.number(fraction * 100, 2)
  return (
    // The table scrolls within its card, so the keyboard must be able to get hold of it.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region needs the focus to be scrolled by keys
    <section class="targets" aria-label="Targets" tabIndex={0}>
      <table class="targets-table">
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col" class="targets-number">
              %
            </th>
            <th scope="col" class="targets-number">
              target g
            </th>
            <th scope="col">lot</th>
          </tr>
        </thead>
        <tbody>
          {setUp.revision.phases.map((phase) => {
            const own = lines.filter((planned) => planned.phase === phase.letter)
            return (
              <Fragment key={phase.letter}>
                <tr class="targets-phase">
                  <th scope="rowgroup">
                    <span class="targets-letter">{phase.letter}</span>
                    {phase.name}
                  </th>
                  <td class="targets-number">{own.length > 0 && percent(share(own))}</td>
                  <td class="targets-number">{own.length > 0 && sized && format.mass(sum(own), finestUg)}</td>
                  <td />
                </tr>
                {own.map((planned) => (
                  <LineRow
                    key={planned.line.id}
                    planned={planned}
                    sized={sized}
                    stepUg={planned.line.amount.kind === 'qs' ? finestUg : planned.balance.stepUg}
                    marks={marksOf(planned.line.id, model.cards.value)}
                    quiet={quietMark(planned.line.id, setUp)}
                  />
                ))}
              </Fragment>
            )
          })}
        </tbody>
        {plan && (
          <tfoot>
            <tr>
              <th scope="row">In all</th>
              <td class="targets-number">{percent(share(lines))}</td>
              <td class="targets-number">{sized ? format.mass(plan.totalUg, finestUg) : '–'}</td>
              <td />
            </tr>
          </tfoot>
        )}
      </table>
      {plan && sized && <p class="targets-note">{heldBack(plan.heldBackUg, lines, format.massWithUnit)}</p>}
      {!(plan && sized) && <p class="targets-note">The targets stand here once the size is right.</p>}
    </section>
  )
}

interface LineRowProps {
  planned: PlannedLine
  sized: boolean
  stepUg: number
  marks: readonly Mark[]
  quiet: string | null
}

const LineRow = ({ planned, sized, stepUg, marks, quiet }: LineRowProps) => {
  const { line, material, fraction, targetUg, lots } = planned
  const format = useFormat()
  const name = `${material.name}${line.amount.kind === 'qs' ? ', q.s.' : line.amount.kind === 'as-needed' ? ', expected' : ''}`
  const atTarget = marks.filter(({ at }) => at === 'target')
  const atLot = marks.filter(({ at }) => at === 'lot')
  return (
    <tr class={marks.length > 0 ? 'targets-marked' : ''}>
      <th scope="row" title={`${name} (${material.inci.map((part) => part.name).join(', ')})`}>
        {name}
      </th>
      <td class="targets-number targets-share">{format.number(fraction * 100, 2)}</td>
      <td class="targets-number">
        <span class="targets-with">
          {atTarget.map((mark) => (
            <Badge key={mark.number} {...mark} />
          ))}
          {quiet && <span class="targets-quiet">{quiet}</span>}
          <strong>{sized ? format.mass(targetUg, stepUg) : '–'}</strong>
        </span>
      </td>
      <td>
        <span class="targets-lot">
          <span title={lots.map(({ code }) => code).join(' + ')}>
            {lots.map(({ code }) => code).join(' + ') || '–'}
          </span>
          {atLot.map((mark) => (
            <Badge key={mark.number} {...mark} />
          ))}
        </span>
      </td>
    </tr>
  )
}

interface Mark {
  number: number
  word: string
  at: 'target' | 'lot'
}

const Badge = ({ number, word }: Mark) => (
  <span class="targets-badge">
    <span class="settle-number">{number}</span> {word}
  </span>
)

const marksOf = (line: string, cards: readonly SettleCard[]): readonly Mark[] =>
  cards.flatMap(({ abouts, code, word }, index) =>
    abouts.includes(line) && code !== 'VESSEL_SMALL'
      ? [{ number: index + 1, word, at: code.startsWith('LOT') ? ('lot' as const) : ('target' as const) }]
      : [],
  )

/** Said, no more: pre-mixed, fairly small, or kept with a reason. */
function quietMark(line: string, { findings, header }: StartProps['setUp']): string | null {
  if (header.premixes?.some((premix) => premix.line === line)) return 'pre-mix'
  if (header.kept.some(({ about }) => about === line)) return 'kept'
  return findings.some(({ code, about }) => about === line && code === 'FAIRLY_SMALL') ? 'fair' : null
}

function heldBack(heldBackUg: number, lines: readonly PlannedLine[], mass: (massUg: number) => string): string {
  const qs = lines.find(({ line }) => line.amount.kind === 'qs')
  if (!qs) return 'No line is q.s.: nothing is held back for rinses or make-up.'
  return heldBackUg > 0
    ? `${mass(heldBackUg)} of ${qs.material.name} is held back for rinses, adjusters and make-up.`
    : `Nothing of ${qs.material.name} is held back: a rinse or an adjuster will make the batch heavier.`
}
