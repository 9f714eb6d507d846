import type { InciPart, Material } from './catalogue'
import { premixId } from './premix-names'

/** A dilution as a material of its batch: constituents, allergens, price and limits follow from its two parts. */
export function premixMaterial(line: string, neat: Material, thinner: Material, oneIn: number): Material {
  const part = 1 / oneIn
  const blend = (own: readonly InciPart[] = [], theirs: readonly InciPart[] = []) => blended(own, theirs, part)
  const allergens = [...new Set([...(neat.allergens ?? []), ...(thinner.allergens ?? [])])]
  const allergenParts = blend(neat.allergenParts, thinner.allergenParts)
  const bears = [neat.maxTemperatureC, thinner.maxTemperatureC].filter((each) => each !== undefined)
  const hazards = neat.hazards ?? thinner.hazards
  return {
    id: premixId(line),
    name: `${neat.name}, 1 in ${oneIn}`,
    inci: blend(neat.inci, thinner.inci),
    function: neat.function,
    ...(thinner.form ? { form: thinner.form } : {}),
    ...(neat.activeMatter
      ? { activeMatter: { ...neat.activeMatter, fraction: neat.activeMatter.fraction * part } }
      : {}),
    ...(neat.useLevel
      ? { useLevel: { min: Math.min(1, neat.useLevel.min * oneIn), max: Math.min(1, neat.useLevel.max * oneIn) } }
      : {}),
    ...(neat.phWindow ? { phWindow: neat.phWindow } : {}),
    ...(bears.length > 0 ? { maxTemperatureC: Math.min(...bears) } : {}),
    ...(hazards ? { hazards } : {}),
    ...(neat.costPerKg !== undefined && thinner.costPerKg !== undefined
      ? { costPerKg: neat.costPerKg * part + thinner.costPerKg * (1 - part) }
      : {}),
    ...(allergens.length > 0 ? { allergens } : {}),
    ...(allergenParts.length > 0 ? { allergenParts } : {}),
  }
}

function blended(own: readonly InciPart[], theirs: readonly InciPart[], part: number): readonly InciPart[] {
  const sums = new Map<string, InciPart>()
  const add = (parts: readonly InciPart[], share: number): void => {
    for (const { name, fraction } of parts) {
      const key = name.trim().toLowerCase()
      const before = sums.get(key)
      sums.set(key, { name: before?.name ?? name, fraction: (before?.fraction ?? 0) + fraction * share })
    }
  }
  add(own, part)
  add(theirs, 1 - part)
  return [...sums.values()].sort((a, b) => b.fraction - a.fraction)
}
