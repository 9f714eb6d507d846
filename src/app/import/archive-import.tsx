import './archive-import.css'
import { useId, useMemo } from 'preact/hooks'
import { Button } from '../../parts/button'
import { Icon } from '../../parts/icon'
import { Notice } from '../../parts/notice'
import type { ArchiveRefusal } from '../../ports/archive'
import { useApp } from '../app'
import { counted } from '../counted'
import { importSentences } from '../refusals/forms-import'
import { sayFrom } from '../refusals/sentences'
import { storageSentences } from '../refusals/storage'
import { Preview } from './archive-preview'
import { type BringState, createBring } from './bring-file'
import type { ImportRefusal } from './import-documents'
import { previewWords } from './preview-words'
import { Progress } from './save-notice'

/** *Bring in a file*: choose it, see what it would bring, then let it in. Twice is no harm. */
export function BringIn() {
  const app = useApp()
  const bring = useMemo(() => createBring(app), [app])
  const id = useId()
  const state = bring.state.value
  const busy = state.step === 'reading' || state.step === 'applying'
  return (
    <div class="bring">
      <label class="bring-choose" for={id}>
        <Icon name="upload" />
        <span>{busy ? 'Reading…' : 'Bring in a file'}</span>
        <input
          id={id}
          type="file"
          accept=".ndjson,.json,application/json,application/x-ndjson"
          disabled={busy}
          onChange={(event) => {
            const file = event.currentTarget.files?.[0]
            // Emptied, so that the same file can be chosen again after it was mended.
            event.currentTarget.value = ''
            if (file) void bring.take(file)
          }}
        />
      </label>
      {busy && (
        <Notice title={state.step === 'reading' ? `Reading ${state.name}.` : `Bringing in ${state.name}.`}>
          <Progress fraction={state.fraction} onStop={bring.stop} />
        </Notice>
      )}
      <div aria-live="polite">
        <BringResult state={state} onApply={() => void bring.apply()} onLeave={bring.leave} />
      </div>
    </div>
  )
}

interface BringResultProps {
  state: BringState
  onApply: () => void
  onLeave: () => void
}

function BringResult({ state, onApply, onLeave }: BringResultProps) {
  switch (state.step) {
    case 'idle':
    case 'reading':
    case 'applying':
      return null
    case 'preview':
      return (
        <Notice
          kind={state.signed.unfit.length > 0 ? 'caution' : 'info'}
          title={`${state.name} is whole: ${previewWords(state.preview)}`}
        >
          {state.preview.gaps.map(({ of, number }) => (
            <p key={`${of} ${number}`}>
              Before entry {number} of {of} an entry is missing, in the file and here.
            </p>
          ))}
          {state.signed.says !== null && <p>{state.signed.says}</p>}
          {state.signed.unfit.map((words) => (
            <p key={words}>
              <strong>{words}</strong>
            </p>
          ))}
          <Preview preview={state.preview} meetings={state.meetings} />
          <div class="bring-buttons">
            <Button kind="filled" label="Bring it in" onPress={onApply} disabled={state.preview.fresh === 0} />
            <Button label="Leave it" onPress={onLeave} />
          </div>
        </Notice>
      )
    case 'done':
      return (
        <Notice kind="good" title={`${counted(state.preview.fresh, 'entry', 'entries')} came in from ${state.name}.`}>
          <Button kind="plain" label="Good" onPress={onLeave} />
        </Notice>
      )
    case 'documents': {
      const { fresh, changed, same } = state.report
      return (
        <Notice kind="good" title={`From ${state.name}: ${fresh} new, ${changed} changed, ${same} here already.`}>
          <Button kind="plain" label="Good" onPress={onLeave} />
        </Notice>
      )
    }
    case 'refused':
      return (
        <Notice kind="over" title={sentenceOf(state.refusal)}>
          <Button kind="plain" label="Leave it" onPress={onLeave} />
        </Notice>
      )
  }
}

const sentenceOf = (refusal: ArchiveRefusal | ImportRefusal): string =>
  sayFrom<ArchiveRefusal | ImportRefusal>({ ...storageSentences, ...importSentences }, refusal)
