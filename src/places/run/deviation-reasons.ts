import type { DeviationPanel } from './deviation-model'

/** The usual reasons for the chosen way, one tap each. */
export function reasonsFor({ chosen, deviation }: DeviationPanel): readonly string[] {
  switch (chosen?.kind) {
    case 'accept':
      return deviation.cause === 'lot'
        ? ['checked, still good', 'released since', 'trial batch']
        : ['inside what the product allows', 'trial batch', 'cannot be mended now']
    case 'discard':
    case 'discard-cup':
      return ['weighed far over', 'wrong material', 'forgotten', 'contaminated']
    default:
      return ['poured too fast', 'balance was not steady', 'wrong scoop', 'spilled']
  }
}
