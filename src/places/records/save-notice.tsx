import type { Saver } from '../../app/import/save-file'
import { sentenceOf } from '../../app/refusals'
import { Button } from '../../parts/button'
import { Notice } from '../../parts/notice'

/** What became of a file that was to be saved; quiet while nothing was asked for. */
export function SaveNotice({ saver }: { saver: Saver }) {
  const state = saver.state.value
  switch (state.step) {
    case 'idle':
      return null
    case 'writing':
      return <Notice title="Writing the file…" live />
    case 'saved':
      return <Notice kind="good" title="The file is on its way out of this app. Keep it somewhere else." live />
    case 'ready':
      return (
        <Notice title="The file is ready." live>
          <Button kind="filled" label="Hand it on" onPress={() => void saver.handOn()} />
        </Notice>
      )
    case 'failed':
      return <Notice kind="over" title={sentenceOf(state.refusal)} live />
  }
}
