import { describe, expect, it } from 'vitest'
import { inOrder } from '../../../../src/batch/formula-checks'
import { checksFor, codesFor, found, material, qs, revision, share, water } from '../../../support/formula-maker'

const oat = material('oat', { useLevel: { min: 0.005, max: 0.02 }, hazards: none() })

function none() {
  return { caution: 'Dust', kind: 'dust', statements: [], wear: ['mask'] } as const
}

describe('total and use levels', () => {
  it('[F1] a total off 100 % is said with its figure, with q.s. and without', () => {
    const off = checksFor(revision([share('water', 60), share('oat', 1)]), [oat])
    expect(found(off, 'TOTAL_OFF')).toMatchObject({ severity: 'stop', figure: { value: 0.61, unit: 'share' } })
    const over = checksFor(revision([qs(), share('oat', 101)]), [oat])
    expect(found(over, 'QS_NEGATIVE')).toMatchObject({ severity: 'stop', figure: { value: 1.01, unit: 'share' } })
    expect(codesFor(revision([qs(), { ...qs(), id: 'again' }]), [])).toContain('QS_TWICE')
    expect(codesFor(revision([]), [])).toEqual(['LINES_NONE'])
    expect(
      codesFor(revision([share('water', 33.3), share('oat', 66.7)]), [{ ...oat, useLevel: { min: 0, max: 1 } }]),
    ).not.toContain('TOTAL_OFF')
  })

  it('[F2] a share outside its use level is said with the level; lines of one material count together', () => {
    const over = checksFor(revision([qs(), share('oat', 1.2), share('oat', 1.2, { id: 'more oat' })]), [oat])
    expect(found(over, 'USE_OVER')).toMatchObject({
      severity: 'warn',
      line: 'oat',
      figure: { value: 0.024 },
      limit: { min: 0.005, max: 0.02 },
      source: { kind: 'own data' },
    })
    expect(codesFor(revision([qs(), share('oat', 0.4)]), [oat])).toContain('USE_UNDER')
    expect(codesFor(revision([qs(), share('oat', 2)]), [oat])).not.toContain('USE_OVER')
    const wide = share('oat', 1, { range: { min: 0.009, max: 0.03 } })
    expect(found(checksFor(revision([qs(), wide]), [oat]), 'USE_MAY_PASS')).toMatchObject({ figure: { value: 0.03 } })
  })

  it('[F3] limits over several lines count a constituent, a class or a function over all lines', () => {
    const half = material('half', {
      inci: [water.inci[0] ?? { name: 'Aqua', fraction: 1 }, { name: 'Oat', fraction: 0.5 }],
    })
    const limited = revision([qs(), share('half', 4), share('oat', 1)], {
      sharedLimits: [{ id: 'oat', name: 'Oat in all', of: { kind: 'inci', name: 'oat' }, max: 0.02 }],
    })
    expect(found(checksFor(limited, [oat, half]), 'SHARED_OVER')).toMatchObject({
      figure: { value: 0.03 },
      limit: { max: 0.02 },
    })
  })

  it('[F4] what data does not allow to be said is said to be missing, each kind once, by name', () => {
    const missing = checksFor(revision([qs(), share('plain', 3), share('gone', 2)]), [material('plain')])
      .filter(({ severity }) => severity === 'missing')
      .flatMap((check) => (check.code === 'DATA_MISSING' ? [`${check.what}: ${check.names.join()}`] : [check.code]))
    expect(missing).toEqual(['use level: plain', 'hazards: plain', 'price: water,plain'])
    expect(codesFor(revision([qs(), share('gone', 2)]), [])).toContain('MATERIAL_UNKNOWN')
    expect(codesFor(revision([qs()]), [], { balances: [] })).toContain('BALANCES_NONE')
    const part = material('part', { inci: [{ name: 'Part', fraction: 0.4 }] })
    expect(found(checksFor(revision([qs(), share('part', 2)]), [part]), 'INCI_NOT_WHOLE')).toMatchObject({
      figure: { value: 0.4 },
    })
  })

  it('[F5] the gravest come first, and what is in order is told', () => {
    const checks = checksFor(revision([qs(), share('oat', 3)]), [oat])
    const order = ['stop', 'warn', 'missing', 'note']
    const ranks = checks.map(({ severity }) => order.indexOf(severity))
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
    expect(inOrder(checks)).toContain('total')
    expect(inOrder(checks)).not.toContain('use levels')
    expect(inOrder(checks)).not.toContain('preservation')
  })
})
