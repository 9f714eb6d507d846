import { wordsOf } from '../../batch/entry-words'
import { Notice } from '../../parts/notice'
import { useRun } from './run-context'
import { useSay } from './use-say'

/** What another page just wrote into this batch. */
export function Elsewhere() {
  const say = useSay()
  const event = useRun().elsewhere.value
  return event === null ? null : <Notice icon="users" title={`On another page: ${wordsOf(event, say)}`} live />
}
