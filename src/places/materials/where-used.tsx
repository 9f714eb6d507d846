import { useFormat } from '../../app/format'
import { addressOf } from '../../app/routes'
import { Card } from '../../parts/card'
import { Row } from '../../parts/choice'
import type { Use } from './stock'

/** The formulas whose current revision has the material, with how much of it. */
export function WhereUsed({ uses }: { uses: readonly Use[] }) {
  const format = useFormat()
  return (
    <Card labelledBy="material-uses">
      <h2 id="material-uses">Where it is used</h2>
      {uses.length === 0 && <p class="materials-hint">In the current revision of no formula.</p>}
      {uses.map(({ formula, revision, share }) => (
        <Row
          key={formula.id}
          icon="book-open"
          label={formula.name}
          sub={`${formula.code} r${revision}`}
          value={share === null ? 'q.s.' : format.percent(share)}
          href={addressOf({ place: 'formulas', formula: formula.id })}
        />
      ))}
    </Card>
  )
}
