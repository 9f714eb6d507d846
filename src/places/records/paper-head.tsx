import type { ComponentChildren } from 'preact'
import { Notice } from '../../parts/notice'
import type { PaperProps } from './paper-props'

/** What batch this is: formula, revision, size, dates, people; and what stands against trusting it. */
export function PaperHead({ record, format, studio }: PaperProps & { studio: string }) {
  const { header, opened, closed, people, totalUg, totalWas, unknownKinds, doubts } = record
  const { revision } = header
  const kind = header.contact === 'leave-on' ? 'leave-on' : 'rinse-off'
  return (
    <header class="paper-head">
      <div class="paper-title">
        <img src="./icons/cup.svg" alt="" width="46" height="46" />
        <div>
          <h1>Batch record</h1>
          <p class="paper-quiet">{studio}</p>
        </div>
        <div class="paper-title-right">
          <p class="paper-code">{header.code}</p>
          <p class="paper-quiet">
            {header.formulaName}, {kind}
          </p>
        </div>
      </div>
      <dl class="paper-facts">
        <Fact name="Formula">
          {header.formulaCode} revision {revision.number}
        </Fact>
        <Fact name="Approved">
          {revision.approvedBy === undefined
            ? 'not yet'
            : `${revision.approvedBy}${revision.approvedAt ? `, ${format.dateTime(Date.parse(revision.approvedAt))}` : ''}`}
        </Fact>
        <Fact name="Size">
          {format.massWithUnit(totalUg)}
          {totalWas.length > 0 && `, was ${totalWas.map((was) => format.massWithUnit(was)).join(', then ')}`}
        </Fact>
        <Fact name="Opened">{opened && `${format.dateTime(opened.atMs)}, ${opened.by}`}</Fact>
        <Fact name="Performed / checked">
          {people.performed.join(', ')} / {people.checked.length > 0 ? people.checked.join(', ') : 'nobody'}
        </Fact>
        <Fact name="Closed">{closed ? `${format.dateTime(closed.atMs)}, ${closed.by}` : 'still open'}</Fact>
      </dl>
      {unknownKinds.length > 0 && (
        <Notice
          kind="caution"
          title={`Some entries are of a newer version of the app (${unknownKinds.join(', ')}). The record shows them in its trail and can only be read here.`}
        />
      )}
      {doubts.length > 0 && (
        <Notice
          kind="caution"
          title={`${doubts.length === 1 ? 'One entry does' : `${doubts.length} entries do`} not add up with the others: see the trail. Nothing was left out for it.`}
        />
      )}
    </header>
  )
}

function Fact({ name, children }: { name: string; children: ComponentChildren }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  )
}
