import type { Finding } from '../../batch/finding'
import { roundedUp, shortMass, sizeText } from './size'
import { nameOf, type SettleCard, type SettleWorld, type Way, withBalance, withPremix } from './ways'

type Small = Extract<Finding, { code: 'TOO_SMALL' }>

/** Lines that are too small for one balance: a finer one, a larger batch, or a dilution of which more is weighed. */
export function smallCard(group: readonly Small[], world: SettleWorld): SettleCard {
  const { format } = world
  const [first] = group
  if (!first) throw new Error('A card needs a finding')
  const tightest = group.reduce((most, each) => (each.tolerance < most.tolerance ? each : most))
  const shown = group
    .slice(0, 3)
    .map(
      ({ about, targetUg, balance }) => `${nameOf(world, about)} is ${format.massWithUnit(targetUg, balance.stepUg)}`,
    )
  const more = group.length > 3 ? `, and ${group.length - 3} more` : ''
  return {
    id: `TOO_SMALL ${first.balance.id}`,
    code: 'TOO_SMALL',
    abouts: group.map(({ about }) => about),
    word: 'small',
    title: `Too small for ${first.balance.name}`,
    text: `It is good to ±${format.percent(tightest.tolerance, 0)} from ${format.massWithUnit(Math.ceil(tightest.goodFromUg))}. ${shown.join(', ')}${more}.`,
    ways: [...finerWay(group, world), largerWay(group, world), ...premixWay(group, world)],
    reasons: ['Close enough for a trial', 'Checked on a finer balance'],
  }
}

function finerWay(group: readonly Small[], { format }: SettleWorld): Way[] {
  const finer = group.find((each) => each.finer)?.finer
  if (!finer) return []
  const lines = group.filter((each) => each.finer?.balance.id === finer.balance.id).map(({ about }) => about)
  const sub = `good from ${format.massWithUnit(Math.ceil(finer.goodFromUg))}, in a boat`
  return [{ label: `Use ${finer.balance.name}`, sub, take: withBalance(lines, finer.balance.id) }]
}

function largerWay(group: readonly Small[], world: SettleWorld): Way {
  const hardest = group.reduce((most, each) => (each.sizeUg > most.sizeUg ? each : most))
  const sizeUg = roundedUp(hardest.sizeUg)
  const thenUg = Math.round((hardest.targetUg * sizeUg) / world.setUp.header.sizeUg)
  return {
    label: `Make ${shortMass(sizeUg, world.format)}`,
    sub: `${nameOf(world, hardest.about)} ${world.format.massWithUnit(thenUg, hardest.balance.stepUg)}`,
    take: (choice) => ({ ...choice, size: sizeText(sizeUg, 'g'), unit: 'g' }),
  }
}

function premixWay(group: readonly Small[], world: SettleWorld): Way[] {
  const first = group.find(({ premixes }) => premixes.length > 0)
  const mix = first?.premixes[0]
  if (!first || !mix) return []
  const name = nameOf(world, first.about)
  const mass = world.format.massWithUnit(mix.doseUg, first.balance.stepUg)
  return [
    {
      label: `Pre-mix 1 in ${mix.oneIn}`,
      sub: `${name} in ${nameOf(world, mix.into)}: weigh ${mass}`,
      take: withPremix(first.about, { into: mix.into, oneIn: mix.oneIn }),
      mixes: first.premixes,
    },
  ]
}
