import { type RangeFault, rangeFaults } from '../range-faults'
import type { FormulaCheck } from './check'
import type { Checked } from './lines'

/** Ranges that contradict themselves, the use level or the formula itself; limits over several lines have their own. */
export function rangeChecks({ lines, byId }: Checked): readonly FormulaCheck[] {
  return rangeFaults(lines.map(({ line, material, share }) => ({ line, material, fraction: share }))).map((fault) => ({
    name: byId.get(fault.about)?.material.name ?? fault.about,
    line: fault.about,
    limit: { min: fault.min, max: fault.max, unit: 'share' },
    source: { kind: 'formula' },
    ...said(fault),
  }))
}

function said(fault: RangeFault): Pick<FormulaCheck, 'severity' | 'figure'> & { readonly code: RangeCode } {
  switch (fault.code) {
    case 'RANGE_AGAINST_USE':
      return { code: 'RANGE_AGAINST_USE', severity: 'warn' }
    case 'RANGE_EXCLUDES':
    case 'SHARED_EXCLUDES':
      return { code: 'RANGE_EXCLUDES', severity: 'stop', figure: { value: fault.share, unit: 'share' } }
    case 'RANGE_CONTRADICTORY':
    case 'SHARED_CONTRADICTORY':
      return { code: 'RANGE_CONTRADICTORY', severity: 'stop' }
  }
}

type RangeCode = 'RANGE_CONTRADICTORY' | 'RANGE_AGAINST_USE' | 'RANGE_EXCLUDES'
