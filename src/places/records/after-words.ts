import type { NotCovered } from '../../batch/covered'

/** What was added after a signature; null where nothing was. */
export function afterWords({ entries, strikes }: NotCovered): string | null {
  if (entries === 0) return null
  const struck = strikes === 0 ? '' : `, ${strikes} of them struck something out`
  return `${entries} ${entries === 1 ? 'entry' : 'entries'} added after it${struck}`
}
