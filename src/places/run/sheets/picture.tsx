import './picture.css'
import { useEffect, useState } from 'preact/hooks'
import { keepPicture, pictureSentence } from '../../../app/pictures/keep-picture'
import { titleOf } from '../../../batch/wording'
import { Button } from '../../../parts/button'
import { TextField } from '../../../parts/form'
import { Icon } from '../../../parts/icon'
import { Notice } from '../../../parts/notice'
import { Sheet } from '../../../parts/sheet'
import { useRun } from '../run-context'
import type { SheetPartProps } from './sheet-part'

type Shrunk = Awaited<ReturnType<Awaited<ReturnType<ReturnType<typeof useRun>['app']['pictures']>>['shrink']>>
type Small = Extract<Shrunk, { ok: true }>['value']

/** A picture from the camera or a file, for the step in hand; never asked for. */
export function PictureSheet({ onClose }: SheetPartProps) {
  const run = useRun()
  const { app } = run
  const { state } = run.handle.view.value
  const planned = run.planned.value
  const [small, setSmall] = useState<Small | null>(null)
  const [caption, setCaption] = useState('')
  const [busy, setBusy] = useState(false)
  const [refused, setRefused] = useState<string | null>(null)
  const take = async (file: File) => {
    setBusy(true)
    setRefused(null)
    const pictures = await app.pictures()
    const shrunk = await pictures.shrink(file)
    setBusy(false)
    setSmall(shrunk.ok ? shrunk.value : null)
    if (!shrunk.ok) setRefused(pictureSentence(shrunk.refusal))
  }
  const keep = async () => {
    if (small === null) return
    setBusy(true)
    const step = planned?.id
    const refusal = await keepPicture(app, run.handle, small, { caption: caption.trim(), step })
    setBusy(false)
    if (refusal === null) onClose()
    else setRefused(pictureSentence(refusal))
  }
  const ready = small !== null && !busy
  return (
    <Sheet
      title="Picture"
      onClose={onClose}
      foot={
        <Button
          kind={ready ? 'filled' : 'closed'}
          label={busy ? 'One moment' : 'Put it into the record'}
          sub={small === null ? 'choose a picture first' : undefined}
          onPress={() => void keep()}
        />
      }
    >
      <p class="sheet-source">
        {planned ? `At ${titleOf(planned.step, state.header)}. ` : ''}It is made small, and place and time that a camera
        writes into it are left out.
      </p>
      <div class="picture-choices">
        <Chooser label="Take a picture" camera onFile={(file) => void take(file)} />
        <Chooser label="Choose a file" onFile={(file) => void take(file)} />
      </div>
      {refused && <Notice kind="over" title={refused} live />}
      {small && <Preview small={small} />}
      {small && <TextField label="What it shows, if you like" value={caption} onChange={setCaption} />}
    </Sheet>
  )
}

interface ChooserProps {
  label: string
  camera?: boolean
  onFile: (file: File) => void
}

const Chooser = ({ label, camera = false, onFile }: ChooserProps) => (
  <label class="picture-choose">
    <Icon name={camera ? 'camera' : 'upload'} />
    <span>{label}</span>
    <input
      type="file"
      accept="image/*"
      {...(camera ? { capture: 'environment' as const } : {})}
      onChange={(event) => {
        const file = event.currentTarget.files?.[0]
        // Emptied, so that the same file can be chosen again.
        event.currentTarget.value = ''
        if (file) onFile(file)
      }}
    />
  </label>
)

function Preview({ small }: { small: Small }) {
  const [url, setUrl] = useState('')
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([new Uint8Array(small.bytes)], { type: small.mime }))
    setUrl(made)
    return () => URL.revokeObjectURL(made)
  }, [small])
  return url === '' ? null : <img class="picture-preview" src={url} alt="As it will be kept" />
}
