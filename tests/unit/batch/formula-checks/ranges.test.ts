import { describe, expect, it } from 'vitest'
import { checksFor, codesFor, found, material, qs, revision, share } from '../../../support/formula-maker'

const oat = material('oat', { useLevel: { min: 0.005, max: 0.02 } })

describe('ranges of a formula', () => {
  it('[R45] one that contradicts itself, its use level or the formula is said with its figures', () => {
    const upside = share('oat', 1, { range: { min: 0.02, max: 0.01 } })
    expect(found(checksFor(revision([qs(), upside]), [oat]), 'RANGE_CONTRADICTORY')).toMatchObject({
      severity: 'stop',
      limit: { min: 0.02, max: 0.01 },
    })
    const strong = share('oat', 5, { range: { min: 0.04, max: 0.06 } })
    expect(found(checksFor(revision([qs(), strong]), [oat]), 'RANGE_AGAINST_USE')).toMatchObject({ severity: 'warn' })
    const apart = share('oat', 1, { range: { min: 0.012, max: 0.015 } })
    expect(found(checksFor(revision([qs(), apart]), [oat]), 'RANGE_EXCLUDES')).toMatchObject({
      figure: { value: 0.01 },
    })
    const good = share('oat', 1, { range: { min: 0.009, max: 0.011 } })
    expect(codesFor(revision([qs(), good]), [oat]).filter((code) => code.startsWith('RANGE'))).toEqual([])
  })

  it('[R45] no q.s. line is worth a note', () => {
    const whole = [share('oat', 1), share('water', 99)]
    expect(found(checksFor(revision(whole), [oat]), 'QS_NONE')).toMatchObject({ severity: 'note' })
    expect(codesFor(revision([qs(), share('oat', 1)]), [oat])).not.toContain('QS_NONE')
  })
})
