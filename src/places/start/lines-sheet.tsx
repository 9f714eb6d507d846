import './sheets.css'
import { useState } from 'preact/hooks'
import { useFormat } from '../../app/format'
import type { PlannedLine } from '../../batch/plan'
import { Button } from '../../parts/button'
import { Row } from '../../parts/choice'
import { Sheet } from '../../parts/sheet'
import { LineChoice } from './line-choice'
import type { StartProps } from './shared'

interface LinesSheetProps extends StartProps {
  onClose: () => void
}

/** Lots and balance of every line; one line at a time is changed. */
export const LinesSheet = ({ model, house, setUp, onClose }: LinesSheetProps) => {
  const format = useFormat()
  const [line, setLine] = useState<string | null>(null)
  const lines = setUp.plan.ok ? [...setUp.plan.value.lines.values()] : []
  const planned = lines.find((each) => each.line.id === line)
  if (planned)
    return (
      <Sheet
        key="line"
        title={planned.material.name}
        onClose={() => setLine(null)}
        closeLabel="Done"
        foot={<Button icon="arrow-left" label="All lines" onPress={() => setLine(null)} />}
      >
        <LineChoice model={model} house={house} setUp={setUp} planned={planned} />
      </Sheet>
    )
  const sub = ({ lots, balance }: PlannedLine) =>
    `${lots.length > 0 ? `lot ${lots.map(({ code }) => code).join(' + ')}` : 'no lot'} · ${balance.name}`
  return (
    <Sheet key="all" title="Lots and balances" onClose={onClose} closeLabel="Done">
      {lines.length === 0 && <p>The lines stand here once the size is right.</p>}
      <ul class="start-rows">
        {lines.map((each) => (
          <li key={each.line.id}>
            <Row
              label={`${each.phase} · ${each.material.name}`}
              sub={sub(each)}
              value={`${format.mass(each.targetUg, each.balance.stepUg)} g`}
              onPress={() => setLine(each.line.id)}
            />
          </li>
        ))}
      </ul>
    </Sheet>
  )
}
