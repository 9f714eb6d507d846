import './paper-pictures.css'
import { useEffect, useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { type PictureBytes, pictureIn, pictureStream } from '../../batch/picture'
import type { PictureRow } from '../../batch/record-pictures'
import type { PaperProps } from './paper-props'

/** Pictures in the order they were taken, each with its moment, person and step. */
export function PaperPictures({ record, format, say }: PaperProps) {
  if (record.pictures.length === 0) return null
  return (
    <section class="paper-section" aria-label="Pictures">
      <h2>Pictures</h2>
      <div class="paper-pictures">
        {record.pictures.map((row) => (
          <figure key={row.entry} class={row.struck ? 'paper-picture paper-struck-row' : 'paper-picture'}>
            <Picture row={row} />
            <figcaption>
              {row.struck ? <s>{row.caption}</s> : row.caption}
              <span class="paper-quiet">
                {' '}
                {format.dateTime(row.atMs)}, {row.by}
                {row.step === undefined ? '' : `, at ${say.step(row.step)}`}
                {row.struck && `; struck ${format.time(row.struck.atMs)} ${row.struck.by}, ${row.struck.reason}`}
              </span>
            </figcaption>
          </figure>
        ))}
      </div>
    </section>
  )
}

/** Read when the record is: undefined until then, null where its bytes are not on this tablet or not its own. */
function Picture({ row: { picture, caption } }: { row: PictureRow }) {
  const { log } = useApp()
  const [bytes, setBytes] = useState<PictureBytes | null | undefined>(undefined)
  useEffect(() => void log.read(pictureStream(picture)).then((events) => setBytes(pictureIn(events))), [log, picture])
  if (bytes === undefined)
    return (
      <p class="paper-quiet" aria-busy="true">
        Reading the picture.
      </p>
    )
  if (bytes === null)
    return <p class="paper-outside">The picture is not on this tablet. Bring in the file of this batch that has it.</p>
  const { mime, base64, width, height } = bytes
  return <img src={`data:${mime};base64,${base64}`} alt={caption || 'Picture'} width={width} height={height} />
}
