import { Button } from '../../parts/button'
import { Meter } from '../../parts/meter'
import { Notice } from '../../parts/notice'
import type { WrittenArchive } from '../../ports/archive'
import { counted } from '../counted'
import { formSentenceOf } from '../refusals/forms'
import type { Saver } from './save-file'

/** What became of a file that was to be saved; quiet while nothing was asked for. */
export function SaveNotice({ saver }: { saver: Saver }) {
  const state = saver.state.value
  switch (state.step) {
    case 'idle':
      return null
    case 'writing':
      return (
        <Notice title="Writing the file and reading it back." live>
          <Progress fraction={state.fraction} onStop={saver.stop} />
        </Notice>
      )
    case 'saved':
      return (
        <Notice kind="good" title={`On its way out: ${writtenWords(state.written)}`} live>
          <p>Keep the file on another device.</p>
          <LeftOut written={state.written} />
        </Notice>
      )
    case 'ready':
      return (
        <Notice title={`The file is ready: ${writtenWords(state.written)}`} live>
          <LeftOut written={state.written} />
          <Button kind="filled" label="Hand it on" onPress={() => void saver.handOn()} />
        </Notice>
      )
    case 'failed':
      return <Notice kind="over" title={formSentenceOf(state.refusal)} live />
  }
}

/** How far it is, and a way to stop it. */
export const Progress = ({ fraction, onStop }: { fraction: number; onStop: () => void }) => (
  <>
    <Meter label="Done" value={String(Math.floor(fraction * 100))} of="%" fraction={fraction} />
    <Button label="Stop" onPress={onStop} />
  </>
)

const writtenWords = ({ entries, batches }: WrittenArchive): string =>
  `${counted(entries, 'entry', 'entries')} of ${counted(batches, 'batch', 'batches')}, verified.`

const LeftOut = ({ written: { leftOut } }: { written: WrittenArchive }) =>
  leftOut === 0 ? null : (
    <p>
      <strong>{counted(leftOut, 'damaged entry is', 'damaged entries are')} not in it:</strong> no tablet would take a
      file with them. A backup from before may have them whole.
    </p>
  )
