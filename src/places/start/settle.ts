import type { BalanceFinding, Finding, LotFinding } from '../../batch/finding'
import { mustBeSettled } from '../../batch/preflight'
import { usableLots } from './lots'
import type { SetUp } from './set-up'
import { rangeCard } from './settle-ranges'
import { smallCard } from './settle-small'
import { stirrerCard, vesselCard } from './settle-vessels'
import { base, keeping, nameOf, type SettleCard, type SettleWorld, withBalance, withLots } from './ways'

/** In the order in which they are numbered: lots, balances, vessels. Lines too small for one balance share a card. */
export function settleCards(world: SettleWorld): readonly SettleCard[] {
  const { findings, header } = world.setUp
  const isKept = ({ code, about }: Finding) => header.kept.some((kept) => kept.code === code && kept.about === about)
  const open = findings.filter((finding) => mustBeSettled(finding) && !isKept(finding))
  const small = new Map<string, Extract<Finding, { code: 'TOO_SMALL' }>[]>()
  const cards: SettleCard[] = []
  for (const finding of open) {
    if (finding.code !== 'TOO_SMALL') {
      cards.push(...cardOf(finding, world))
      continue
    }
    const group = small.get(finding.balance.id) ?? []
    small.set(finding.balance.id, [...group, finding])
  }
  const smallCards = [...small.values()].map((group) => smallCard(group, world))
  const isVessel = ({ code }: SettleCard) => code === 'VESSEL_SMALL' || code === 'STIRRER_RANGE'
  return [...cards.filter((card) => !isVessel(card)), ...smallCards, ...cards.filter(isVessel)]
}

function cardOf(finding: Finding, world: SettleWorld): SettleCard[] {
  switch (finding.code) {
    case 'LOT_EXPIRED':
    case 'LOT_RETEST':
    case 'LOT_QUARANTINED':
      return [lotCard(finding, world)]
    case 'LOT_SHORT':
      return [shortCard(finding, world)]
    case 'OVER_BALANCE':
      return [overBalanceCard(finding, world)]
    case 'VESSEL_SMALL':
      return [vesselCard(finding, world)]
    case 'RANGE_CONTRADICTORY':
    case 'RANGE_AGAINST_USE':
    case 'RANGE_EXCLUDES':
    case 'SHARED_CONTRADICTORY':
    case 'SHARED_EXCLUDES':
      return [rangeCard(finding, world)]
    case 'STIRRER_RANGE':
      return [stirrerCard(finding, world)]
    case 'TOO_SMALL':
    case 'FAIRLY_SMALL':
    case 'NO_LOT':
    case 'NOTHING_HELD_BACK':
    case 'NO_QS':
      return []
  }
}

function lotCard(finding: Extract<LotFinding, { lot: unknown }>, world: SettleWorld): SettleCard {
  const { about, lot } = finding
  const { format, setUp } = world
  const name = nameOf(world, about)
  const { code } = finding
  const words = lotWords[code]
  const shelf = (setUp.shelves.get(about) ?? []).filter((each) => each.lot.id !== lot.id)
  const next = usableLots(shelf, neededUg(setUp, about))
  const first = shelf.find((each) => each.lot.id === next[0])
  const codes = next.flatMap((id) => shelf.filter((each) => each.lot.id === id).map((each) => each.lot.code))
  const day = code === 'LOT_RETEST' ? lot.retestOn : lot.expires
  const ago = 'daysOver' in finding ? `${day ? format.date(day) : ''}, ${days(finding.daysOver)} ago` : ''
  const instead = first
    ? ` ${first.lot.code} is in date, ${format.massWithUnit(first.leftUg)} left.`
    : ' There is no other lot that may be used.'
  return {
    ...base(finding, words.word),
    id: `${code} ${about} ${lot.id}`,
    title: `${name} ${words.title}`,
    text: words.text(lot.code, ago) + instead,
    ways: next.length > 0 ? [{ label: `Use ${codes.join(' + ')}`, take: withLots(about, next) }] : [],
    reasons: words.reasons,
  }
}

const lotWords = {
  LOT_EXPIRED: {
    word: 'expired',
    title: 'has expired',
    text: (code: string, ago: string) => `Lot ${code} ran out on ${ago}.`,
    reasons: ['Re-tested, still good', 'Trial batch, not for use'],
  },
  LOT_RETEST: {
    word: 'retest',
    title: 'is to be tested again',
    text: (code: string, ago: string) => `Lot ${code} was due for it on ${ago}.`,
    reasons: ['Re-tested, still good', 'Trial batch, not for use'],
  },
  LOT_QUARANTINED: {
    word: 'quarantine',
    title: 'is in quarantine',
    text: (code: string) => `Lot ${code} has not been released yet.`,
    reasons: ['Released by word', 'Trial batch, not for use'],
  },
} as const

function shortCard(finding: Extract<LotFinding, { code: 'LOT_SHORT' }>, world: SettleWorld): SettleCard {
  const { about, neededUg: wantedUg, leftUg } = finding
  const { format, setUp } = world
  const chosen = setUp.header.lots.find(({ line }) => line === about)?.lots.map(({ id }) => id) ?? []
  const more = usableLots(setUp.shelves.get(about) ?? [], wantedUg, chosen).slice(chosen.length)
  const codes = more.flatMap((id) => world.house.lots.get(id)?.code ?? [])
  const left = leftUg > 0 ? `${format.massWithUnit(leftUg)} is left` : 'Nothing is left'
  return {
    ...base(finding, 'short'),
    title: `${leftUg > 0 ? 'Not enough' : 'No'} ${nameOf(world, about)}`,
    text: `${left} of what was chosen; ${format.massWithUnit(wantedUg)} is needed.${
      codes.length === 0 ? ' No other lot may be used.' : ''
    }`,
    ways: codes.length > 0 ? [{ label: `Add ${codes.join(' + ')}`, take: withLots(about, [...chosen, ...more]) }] : [],
    reasons: ['More is on its way', 'The stock figure is wrong'],
  }
}

function overBalanceCard(finding: Extract<BalanceFinding, { code: 'OVER_BALANCE' }>, world: SettleWorld): SettleCard {
  const { about, balance, targetUg } = finding
  const larger = world.house.balances
    .filter(({ capacityUg }) => capacityUg >= targetUg)
    .sort((a, b) => a.stepUg - b.stepUg)[0]
  const loads = Math.ceil(targetUg / balance.capacityUg)
  const inParts = `Weigh it in ${loads} loads`
  return {
    ...base(finding, 'too much'),
    title: `Too much for ${balance.name}`,
    text: `${nameOf(world, about)} is ${world.format.massWithUnit(targetUg)}; it carries ${world.format.massWithUnit(balance.capacityUg)}.`,
    ways: [
      ...(larger ? [{ label: `Use ${larger.name}`, take: withBalance([about], larger.id) }] : []),
      { label: inParts, take: keeping(finding.code, [about], inParts) },
    ],
    reasons: [inParts],
  }
}

const neededUg = ({ plan }: SetUp, line: string): number => (plan.ok ? (plan.value.lines.get(line)?.targetUg ?? 0) : 0)

const days = (count: number): string => (count === 1 ? '1 day' : `${count} days`)
