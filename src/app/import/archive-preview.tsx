import './archive-preview.css'
import type { ArchivePreview } from '../../ports/archive'
import { useFormat } from '../format'
import { kindRows, type MeetingRow } from './preview-words'

interface PreviewProps {
  preview: ArchivePreview
  meetings: readonly MeetingRow[]
}

/** What a file would bring, kind by kind, and by name what is here and differs. */
export function Preview({ preview, meetings }: PreviewProps) {
  const format = useFormat()
  const more = preview.kinds.reduce((sum, { meeting }) => sum + meeting, 0) - meetings.length
  return (
    <>
      <p class="bring-hint">
        Saved on {format.dateTime(Date.parse(preview.header.madeAt))}. No entry that is here is changed or replaced.
      </p>
      <table class="bring-table">
        <thead>
          <tr>
            <th scope="col">In the file</th>
            <th scope="col">new</th>
            <th scope="col">goes on</th>
            <th scope="col">same</th>
            <th scope="col">differs</th>
          </tr>
        </thead>
        <tbody>
          {kindRows(preview.kinds).map(({ kind, name, fresh, longer, same, meeting }) => (
            <tr key={kind}>
              <th scope="row">{name}</th>
              <td>{fresh}</td>
              <td>{longer}</td>
              <td>{same}</td>
              <td>{meeting}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {meetings.length > 0 && (
        <>
          <h3 class="bring-meet">What differs from what is here</h3>
          <ul class="bring-meetings">
            {meetings.map(({ name, becomes }) => (
              <li key={`${name} ${becomes}`}>
                <strong>{name}</strong> {becomes}
              </li>
            ))}
          </ul>
          {more > 0 && <p class="bring-hint">And {more} more, which are treated alike.</p>}
        </>
      )}
    </>
  )
}
