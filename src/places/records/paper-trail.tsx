import '../../parts/mono.css'
import { useEffect, useState } from 'preact/hooks'
import { wordsOf } from '../../batch/entry-words'
import type { TrailRow } from '../../batch/record-trail'
import { Button } from '../../parts/button'
import { classes } from '../../parts/classes'
import type { PaperProps } from './paper-props'
import { VerifyAct } from './verify-act'

/** Entries shown at a time; all of them are printed. */
const pageSize = 100

interface PaperTrailProps extends PaperProps {
  /** A place of the record that was asked for: where it is an entry, its page is shown. */
  target?: string | undefined
}

/** Every entry and change in the order it was written: nothing is left out, what was struck stays legible. */
export function PaperTrail({ record, format, say, target }: PaperTrailProps) {
  const pages = Math.max(1, Math.ceil(record.trail.length / pageSize))
  const [page, setPage] = useState(0)
  useEffect(() => {
    const index = record.trail.findIndex(({ entry }) => target === `entry-${entry}`)
    if (index >= 0) setPage(Math.floor(index / pageSize))
  }, [target])
  const on = (index: number): boolean => Math.floor(index / pageSize) === page
  const { verification } = record
  const [brokenAt, setBrokenAt] = useState(verification.intact ? null : verification.brokenAt)
  const showBroken = (number: number | null) => {
    setBrokenAt(number)
    if (number !== null) setPage(Math.min(pages - 1, Math.floor((number - 1) / pageSize)))
  }
  return (
    <section class="paper-section" id="trail">
      <h2>Every entry and change</h2>
      <VerifyAct batch={record.header.id} onFound={showBroken} />
      <table class="paper-table paper-trail">
        <thead>
          <tr>
            <th scope="col" class="paper-number">
              No.
            </th>
            <th scope="col">Written</th>
            <th scope="col">By</th>
            <th scope="col">What</th>
            <th scope="col">From, on</th>
            <th scope="col">Hash</th>
          </tr>
        </thead>
        <tbody>
          {record.trail.map((row, index) => (
            <tr
              key={row.entry}
              id={`trail-${row.entry}`}
              class={classes(!on(index) && 'paper-other-page', row.number === brokenAt && 'paper-broken')}
            >
              <td class="paper-number">{row.number}</td>
              <td class="paper-time">
                {format.dateTime(row.writtenAtMs ?? row.atMs)}
                {row.writtenAtMs !== undefined && (
                  <span class="paper-small"> happened {format.dateTime(row.atMs)}</span>
                )}
              </td>
              <td>{row.by}</td>
              <td>
                {row.number === brokenAt && <strong class="paper-outside">Not as it was written. </strong>}
                {row.struck ? <s>{wordsOf(row.event, say)}</s> : wordsOf(row.event, say)}
                {row.struck && (
                  <span class="paper-small">
                    {' '}
                    struck {format.time(row.struck.atMs)} {row.struck.by}, {row.struck.reason}
                  </span>
                )}
              </td>
              <td class="paper-small">{sourceWords(row)}</td>
              <td class="mono paper-hash">{row.event.hash.slice(0, 8)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {pages > 1 && (
        <nav class="paper-pages" aria-label="Pages of entries">
          <Button label="Earlier" icon="arrow-left" disabled={page === 0} onPress={() => setPage(page - 1)} />
          <span>
            {page + 1} of {pages}
          </span>
          <Button label="Later" icon="arrow-right" disabled={page === pages - 1} onPress={() => setPage(page + 1)} />
        </nav>
      )}
    </section>
  )
}

/** Where the value came from, and what was typed or sent to the letter. */
function sourceWords({ source, device }: TrailRow): string {
  const raw = source.raw === undefined ? '' : ` “${source.raw}”`
  return `${source.kind}${raw}${device === undefined ? '' : `, ${device}`}`
}
