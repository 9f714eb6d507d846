import type { DeviationRecord } from '../../batch/record-deviations'

/** What was off, with its mass as it is shown: "Squalane 0.410 g over". */
export function deviationWords({ name, direction, cause }: DeviationRecord, mass: string): string {
  switch (cause) {
    case 'forgotten':
      return `${mass} of ${name} missing, its step had passed`
    case 'foreign':
      return `${mass} of ${name}, not in the formula`
    case 'loss':
      return `${mass} of ${name} gone, with what stood with it`
    case 'lot':
      return `${name} from a lot that was not to be used`
    default:
      return `${name} ${mass} ${direction}`
  }
}
