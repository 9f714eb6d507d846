import type { FormulaCheck } from './check'
import type { Checked } from './lines'
import type { Walked } from './walk'

/** Lines against the temperature of the vessel that they go into, and against what is heated with them in it. */
export function procedureChecks(checked: Checked): readonly FormulaCheck[] {
  const said = new Set<string>()
  return checked.walk.flatMap((walked) => [...entering(checked, walked, said), ...heated(checked, walked, said)])
}

/** Once for each line: the first step that is too hot is the one to mend. */
function entering({ byId }: Checked, { step, before, entering }: Walked, said: Set<string>): FormulaCheck[] {
  return entering.flatMap((id): FormulaCheck[] => {
    const line = byId.get(id)
    const max = line?.material.maxTemperatureC
    if (!line || max === undefined || before.temperatureC <= max || said.has(id)) return []
    said.add(id)
    return [
      {
        code: before.heated ? 'NEVER_COOLED' : 'ENTERS_TOO_HOT',
        severity: 'warn',
        line: id,
        step: step.id,
        name: line.material.name,
        figure: { value: degrees(before.temperatureC), unit: 'celsius' },
        limit: { max, unit: 'celsius' },
        source: { kind: 'own data' },
      },
    ]
  })
}

function heated({ byId }: Checked, { step, index, before, after }: Walked, said: Set<string>): FormulaCheck[] {
  if (after.temperatureC <= before.temperatureC) return []
  return before.lines.flatMap((id): FormulaCheck[] => {
    const line = byId.get(id)
    const max = line?.material.maxTemperatureC
    if (!line || max === undefined || after.temperatureC <= max || said.has(id)) return []
    said.add(id)
    return [
      {
        code: 'HEATED_ABOVE',
        severity: 'warn',
        line: id,
        step: step.id,
        name: line.material.name,
        title: `step ${index + 1}, ${step.title ?? step.kind}`,
        figure: { value: degrees(after.temperatureC), unit: 'celsius' },
        limit: { max, unit: 'celsius' },
        source: { kind: 'own data' },
      },
    ]
  })
}

const degrees = (temperatureC: number): number => Number(temperatureC.toFixed(1))
