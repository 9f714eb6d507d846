import { describe, expect, it } from 'vitest'
import { watchJumps } from '../../../src/devices/clock/jump-watch'
import { manualClock } from '../../../src/devices/clock/manual-clock'

const start = { wallMs: 1_000_000, steadyMs: 500, hidden: false }
const later = (wallMs: number, steadyMs: number, hidden = false) => ({
  wallMs: start.wallMs + wallMs,
  steadyMs: start.steadyMs + steadyMs,
  hidden,
})

describe('the watch for clock jumps', () => {
  it('[T20] says nothing while both clocks go on together', () => {
    const check = watchJumps(start)
    expect(check(later(1000, 1000))).toBeNull()
    expect(check(later(61_000, 61_000))).toBeNull()
  })

  it('[T20] tells from where to where a clock was put forward before eyes', () => {
    const check = watchJumps(start)
    expect(check(later(3_601_000, 1000))).toEqual({
      fromMs: start.wallMs + 1000,
      toMs: start.wallMs + 3_601_000,
      maybeSlept: false,
    })
  })

  it('[T20] tells a clock put back, which no sleep can explain', () => {
    const check = watchJumps({ ...start, hidden: true })
    expect(check(later(-59_000, 1000, true))).toEqual({
      fromMs: start.wallMs + 1000,
      toMs: start.wallMs - 59_000,
      maybeSlept: false,
    })
  })

  it('[T20] says that a hidden page whose time leapt may have slept', () => {
    const check = watchJumps({ ...start, hidden: true })
    expect(check(later(1_200_000, 800))?.maybeSlept).toBe(true)
  })

  it('[T20] never adds a slow drift up to a jump', () => {
    const check = watchJumps(start)
    const drifting = Array.from({ length: 100 }, (_, index) => check(later((index + 1) * 1100, (index + 1) * 1000)))
    expect(drifting.every((jump) => jump === null)).toBe(true)
  })

  it('[T20] tells each jump once', () => {
    const check = watchJumps(start)
    expect(check(later(10_000, 1000))).not.toBeNull()
    expect(check(later(11_000, 2000))).toBeNull()
  })
})

describe('the manual clock', () => {
  it('moves only when told to, and tells of jumps until the listener leaves', () => {
    const clock = manualClock(5000, 60)
    const heard: unknown[] = []
    const leave = clock.onJump((jump) => heard.push(jump))
    clock.advance(1500)
    clock.jumpTo(2000)
    leave()
    clock.jumpTo(9000)
    expect(clock.nowMs()).toBe(9000)
    expect(clock.offsetMinutes()).toBe(60)
    expect(heard).toEqual([{ fromMs: 6500, toMs: 2000, maybeSlept: false }])
  })
})
