import { type Format, useFormat } from '../../app/format'
import type { Check, Revision, VesselNeed } from '../../batch/formula'
import { Card } from '../../parts/card'
import { Row } from '../../parts/choice'

/** Specification, vessels, and what is looked at before the start. */
export function RevisionChecks({ revision }: { revision: Revision }) {
  const format = useFormat()
  return (
    <div class="formula-two">
      <Card label="Specification" class="formula-card-flat">
        <h2>Specification</h2>
        {revision.specification.length === 0 && <p class="formulas-hint">No check is asked for.</p>}
        {revision.specification.map((check) => (
          <Row key={check.id} label={check.label} sub={conditionsOf(check)} value={limitsOf(check, format)} />
        ))}
        {revision.restHours !== undefined && (
          <p class="formulas-hint">Rest of {revision.restHours} h before the final checks.</p>
        )}
      </Card>
      <Card label="Vessels" class="formula-card-flat">
        <h2>Vessels</h2>
        {revision.vessels.map((vessel) => (
          <Row key={vessel.id} icon="beaker" label={vessel.name} sub={needOf(vessel)} />
        ))}
      </Card>
      {revision.preflight.length > 0 && (
        <Card label="Before the start" class="formula-card-flat">
          <h2>Before the start</h2>
          <ul class="formula-list">
            {revision.preflight.map((item) => (
              <li key={item}>{item}</li>
            ))}
          </ul>
        </Card>
      )}
    </div>
  )
}

function conditionsOf({ when, basis, method }: Check): string {
  const sample =
    basis?.kind === 'dilution' ? `${Number((basis.fraction * 100).toFixed(4))} % dilution` : (basis?.kind ?? '')
  return [when === 'after-rest' ? 'after the rest' : 'in process', sample, method ?? '']
    .filter((part) => part !== '')
    .join(' · ')
}

function limitsOf({ limits, unit, expected }: Check, format: Format): string {
  if (limits === undefined) return expected ?? ''
  const { min, max } = limits
  const tail = unit ? ` ${unit}` : ''
  if (min !== undefined && max !== undefined) return `${format.number(min)}–${format.number(max)}${tail}`
  if (min !== undefined) return `at least ${format.number(min)}${tail}`
  return max === undefined ? (expected ?? '') : `at most ${format.number(max)}${tail}`
}

const needOf = ({ kind, holds, roomFactor, openLifeMinutes }: VesselNeed): string =>
  [
    kind,
    holds ?? '',
    roomFactor === undefined ? '' : `room for ${roomFactor} times its contents`,
    openLifeMinutes === undefined ? '' : `open for ${openLifeMinutes} min at most`,
  ]
    .filter((part) => part !== '')
    .join(' · ')
