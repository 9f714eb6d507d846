import { wordsOf } from '../../batch/entry-words'
import { Notice } from '../../parts/notice'
import { useRun } from './run-context'
import { useSay } from './use-say'

const showsForMs = 8000

/** What another page just wrote into this batch, for a few seconds. */
export function Elsewhere() {
  const say = useSay()
  const { app, handle } = useRun()
  const heard = handle.fromElsewhere.value
  if (heard === null || app.nowMs.value - heard.atMs > showsForMs) return null
  return <Notice icon="users" title={`On another page: ${wordsOf(heard.event, say)}`} live />
}
