interface Expected {
  readonly kind: 'cooling' | 'heating'
  readonly targetC: number
  readonly lastC?: number
}

/**
 * What a reading is in °C if it was read off a thermometer in °F: given where it is no likely °C here, and likely as °F.
 * 167 typed for water that heats to 75 °C gives 75; null where °C is what was meant.
 */
export function celsiusMeant(typed: number, { kind, targetC, lastC }: Expected): number | null {
  const meantC = Math.round(((typed - 32) / 1.8) * 10) / 10
  const hottestC = kind === 'heating' ? Math.max(targetC, lastC ?? targetC) : (lastC ?? boilingC)
  const isUnlikely =
    typed > hottestC + farC || (lastC !== undefined && typed - lastC > 2 * farC && Math.abs(meantC - lastC) < farC)
  const isLikelyMeant = meantC > 0 && meantC <= hottestC + nearC
  return isUnlikely && isLikelyMeant ? meantC : null
}

const boilingC = 100
/** No vessel of this bench is found so much hotter than it should be. */
const farC = 25
const nearC = 10
