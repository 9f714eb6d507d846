import type { SetUp } from './set-up'

/** What keeps no batch shut and is still to be known before the first weighing. */
export function notesOf({ findings, plan }: SetUp): readonly string[] {
  return findings.flatMap(({ code, about }): string[] => {
    if (code === 'NO_QS')
      return ['No line is q.s.: after a slip none can give way, and a lot of another assay changes the total.']
    if (code !== 'NOTHING_HELD_BACK') return []
    const name = plan.ok ? plan.value.lines.get(about)?.material.name : undefined
    return [`Nothing is held back of ${name ?? 'the q.s. line'}: after a slip none of it can give way.`]
  })
}
