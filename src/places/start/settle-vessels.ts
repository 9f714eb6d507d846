import type { StirrerFinding, VesselFinding } from '../../batch/finding'
import { base, type SettleCard, type SettleWorld, withVessel } from './ways'

/** A vessel that is too small for what goes in, with a larger one. */
export function vesselCard(finding: VesselFinding, world: SettleWorld): SettleCard {
  const { about, peakUg, neededUg: wantedUg, capacityUg } = finding
  const { format, house, setUp } = world
  const row = setUp.vessels.find(({ need }) => need.id === about)
  const taken = new Set(setUp.vessels.map(({ kept }) => kept?.id))
  const larger = house.vessels
    .filter((kept) => kept.capacityUg >= wantedUg && !taken.has(kept.id) && !kept.archived)
    .sort((a, b) => a.capacityUg - b.capacityUg)[0]
  const fits = peakUg <= capacityUg
  const room = fits ? ` The formula asks for room for ${format.massWithUnit(wantedUg)}.` : ''
  return {
    ...base(finding, 'small'),
    title: `${row?.vessel.name ?? about} is ${fits ? 'tight' : 'too small'}`,
    text: `${format.massWithUnit(peakUg)} goes in; it holds ${format.massWithUnit(capacityUg)}.${room}`,
    ways: larger ? [{ label: `Use ${larger.name}`, take: withVessel(about, larger.id) }] : [],
    reasons: ['It has held this before', 'Made in two parts'],
  }
}

/** What is stirred is not what the stirrer is made for, with a vessel whose stirrer is. */
export function stirrerCard({ about, peakUg, stirsUg, code }: StirrerFinding, world: SettleWorld): SettleCard {
  const { format, house, setUp } = world
  const row = setUp.vessels.find(({ need }) => need.id === about)
  const taken = new Set(setUp.vessels.map(({ kept }) => kept?.id))
  const neededRoomUg = peakUg * (row?.need.roomFactor ?? 1)
  const other = house.vessels
    .filter((kept) => !taken.has(kept.id) && !kept.archived && kept.capacityUg >= neededRoomUg)
    .filter(({ stirsUg: range }) => range !== undefined && peakUg >= range.min && peakUg <= range.max)
    .sort((a, b) => a.capacityUg - b.capacityUg)[0]
  const [least, most] = [format.massWithUnit(stirsUg.min), format.massWithUnit(stirsUg.max)]
  return {
    ...base({ code, about }, 'stirrer'),
    title: `The stirrer is not made for this ${peakUg < stirsUg.min ? 'little' : 'much'}`,
    text: `${format.massWithUnit(peakUg)} is stirred in ${row?.vessel.name ?? about}; its stirrer moves ${least} to ${most}.`,
    ways: other ? [{ label: `Use ${other.name}`, take: withVessel(about, other.id) }] : [],
    reasons: ['Another stirrer is taken', 'Stirred by hand'],
  }
}
