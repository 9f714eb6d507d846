/** A whole lotion, made, closed and looked into, with something of everything that a reviewer looks for. */
import { weigh } from '../house/demonstration/acts'
import { begin } from '../house/demonstration/begin'
import { type Bench, idOf, openBench } from '../house/demonstration/bench'
import { demonstrationCatalogue } from '../house/demonstration/catalogue'
import { headerOf } from '../house/demonstration/header'
import { nextDay } from '../house/demonstration/lotion-follow-up'
import { makeLotion } from '../house/demonstration/lotion-run'
import { g } from '../house/demonstration/mass'

const openedAt = '2026-11-17T09:20:00+00:00'

/** Its batch code is QW-LOT-01-041. `viscosity` is what is read the next day; the formula asks for 8,000 to 16,000. */
export function wholeBatch({ viscosity = 11_400 } = {}): Bench {
  const [lotion] = demonstrationCatalogue.formulas
  const header = headerOf(lotion, {
    id: idOf(Date.parse(openedAt), 41),
    number: 41,
    sizeUg: g(500),
    on: '2026-11-17',
  })
  const bench = begin(openBench(header, openedAt, 141), header)
  makeLotion(bench, { 'b-shea': slipOfThePoint, 'b-emulsifier': scoopTooMany, 'a-hydrate': cutShort })
  nextDay(bench, { ph: 5.1, viscosity, thinsPerWeek: 0.009 }, { decision: 'accept', note: 'Inside the limits.' })
  const deviation = [...bench.state.deviations.keys()].at(-1)
  bench.wait(10)
  bench.intend({
    do: 'note',
    text: 'The scoop held more than it used to; a smaller one lies there now.',
    ...(deviation === undefined ? {} : { deviation }),
  })
  return bench
}

function slipOfThePoint(bench: Bench): void {
  const entry = weigh(bench, 'b-shea', g(99.8))
  bench.wait(0.4)
  bench.intend({ do: 'strike', entry, reason: 'slip of the point' })
  weigh(bench, 'b-shea')
}

function scoopTooMany(bench: Bench): void {
  weigh(bench, 'b-emulsifier', g(17.91))
  bench.wait(1)
  const open = [...bench.state.deviations.values()].find(({ settled }) => settled === undefined)
  bench.intend({ do: 'settle', deviation: open?.id ?? '', remedy: 'accept', reason: 'inside what the formula allows' })
}

function cutShort(bench: Bench): void {
  const timer = bench.state.timers.get(bench.state.steps.get('a-hydrate')?.timer ?? '')
  bench.intend({
    do: 'pass-gate',
    step: 'a-hydrate',
    gate: 'TIMER_RUNNING',
    detail: 'some of the 20 min still to run',
    reason: 'looked smooth already',
  })
  bench.intend({ do: 'acknowledge-timer', timer: timer?.id ?? '' })
  bench.intend({ do: 'finish-step', step: 'a-hydrate', saw: 'smooth, no lumps' })
}
