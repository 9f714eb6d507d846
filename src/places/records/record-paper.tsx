import { useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import type { BatchRecord } from '../../batch/record'
import { PaperDeviations } from './paper-deviations'
import { PaperFoot } from './paper-foot'
import { PaperHead } from './paper-head'
import { PaperEquipment, PaperNotes } from './paper-lists'
import { PaperMass } from './paper-mass'
import { PaperMaster } from './paper-master'
import { PaperMaterials } from './paper-materials'
import { PaperResults, PaperStability } from './paper-results'
import { PaperSignatures } from './paper-signatures'
import { PaperSteps } from './paper-steps'
import { PaperTrail } from './paper-trail'
import { sayOf } from './say'

/** The record as it is read and printed: first what a reviewer looks for, then the formula and every entry. */
export function RecordPaper({ record }: { record: BatchRecord }) {
  const app = useApp()
  const format = useFormat()
  const say = useMemo(() => sayOf(record, format), [record, format])
  const paper = { record, format, say }
  return (
    <article class="paper" aria-label={`Batch record ${record.header.code}`}>
      <PaperHead {...paper} studio={app.settings.value.value.studio} />
      <PaperEquipment {...paper} />
      <PaperMaterials {...paper} />
      <PaperDeviations {...paper} />
      <div class="paper-columns">
        <PaperSteps {...paper} />
        <div class="paper-column">
          <PaperResults {...paper} />
          <PaperMass {...paper} />
        </div>
      </div>
      <PaperStability {...paper} />
      <PaperNotes {...paper} />
      <PaperSignatures {...paper} />
      <PaperMaster {...paper} />
      <PaperTrail {...paper} />
      <PaperFoot {...paper} />
    </article>
  )
}
