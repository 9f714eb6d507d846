import type { RangeFault } from '../../batch/range-faults'
import { base, nameOf, type SettleCard, type SettleWorld } from './ways'

/** What the formula asks of itself and cannot all hold. Nothing here mends it; the formula does. */
export function rangeCard(fault: RangeFault, world: SettleWorld): SettleCard {
  const { min, max, about } = fault
  const figure = (share: number): string => world.format.number(Number((share * 100).toFixed(4)))
  const range = `${figure(min)}–${figure(max)} %`
  const shared = world.setUp.revision.sharedLimits?.find(({ id }) => id === about)
  const name = shared?.name ?? nameOf(world, about)
  const card = {
    ...base(fault, 'range'),
    ways: [],
    reasons: ['The formula is being changed', 'Trial batch, not for use'],
  }
  const after = 'After a slip no way on would keep it. Change the formula.'
  switch (fault.code) {
    case 'RANGE_CONTRADICTORY':
    case 'SHARED_CONTRADICTORY':
      return {
        ...card,
        title: `${name} contradicts itself`,
        text: `At least ${figure(min)} and at most ${figure(max)} %. ${after}`,
      }
    case 'RANGE_AGAINST_USE':
      return {
        ...card,
        title: `${name}: range against use level`,
        text: `The formula accepts ${range}, its use level is ${figure(fault.use.min)}–${figure(fault.use.max)} %. ${after}`,
      }
    case 'RANGE_EXCLUDES':
    case 'SHARED_EXCLUDES':
      return {
        ...card,
        title: `${name} is outside its own limits`,
        text: `It comes to ${figure(fault.share)} % as planned; the formula accepts ${range}. ${after}`,
      }
  }
}
