import type { HazardKind } from '../../../batch/catalogue'
import type { IconName } from '../../../parts/icon'

/** The drawing beside a caution; the words say what it is. */
export function hazardIcon(kind: HazardKind | undefined): IconName {
  switch (kind) {
    case 'dust':
      return 'wind'
    case 'caustic':
    case 'acid':
      return 'glasses'
    case 'hot':
    case 'flammable':
      return 'flame'
    case 'sensitiser':
      return 'hand'
    case 'slippery':
      return 'droplets'
    case 'other':
    case undefined:
      return 'triangle-alert'
  }
}
