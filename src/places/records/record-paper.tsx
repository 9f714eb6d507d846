import { useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import type { LabelDraft } from '../../batch/label-draft'
import type { BatchRecord } from '../../batch/record'
import { findingsOf } from '../../batch/record-review'
import { PaperCurves } from './paper-curves'
import { PaperDeviations } from './paper-deviations'
import { PaperFoot } from './paper-foot'
import { PaperHead } from './paper-head'
import { PaperLabel } from './paper-label'
import { PaperEquipment, PaperNotes } from './paper-lists'
import { PaperLots } from './paper-lots'
import { PaperMass } from './paper-mass'
import { PaperMaster } from './paper-master'
import { PaperMaterials } from './paper-materials'
import { PaperPictures } from './paper-pictures'
import { PaperResults, PaperStability } from './paper-results'
import { PaperReview } from './paper-review'
import { PaperReworks } from './paper-rework'
import { PaperSamples } from './paper-samples'
import { PaperSignatures } from './paper-signatures'
import { PaperStages } from './paper-stages'
import { PaperSteps } from './paper-steps'
import { PaperTimers } from './paper-timers'
import { PaperTrail } from './paper-trail'
import { sayOf } from './say'
import { useDeviceVerdicts } from './use-device-verdicts'

interface RecordPaperProps {
  record: BatchRecord
  label: LabelDraft | null
  /** Shows what is out of the ordinary alone. */
  reviewed: boolean
  onLead: (at: string) => void
  target?: string | undefined
}

/** The record as it is read and printed: first what a reviewer looks for, then the formula and every entry. */
export function RecordPaper({ record, label, reviewed, onLead, target }: RecordPaperProps) {
  const app = useApp()
  const format = useFormat()
  const say = useMemo(() => sayOf(record, format), [record, format])
  const verdicts = useDeviceVerdicts(record.device.rows)
  const findings = useMemo(() => {
    return findingsOf(
      record,
      record.device.rows.filter(({ entry }) => verdicts.get(entry)?.fits === false),
    )
  }, [record, verdicts])
  const paper = { record, format, say }
  return (
    <article class={reviewed ? 'paper paper-reviewed' : 'paper'} aria-label={`Batch record ${record.header.code}`}>
      <PaperHead {...paper} studio={app.settings.value.value.studio} />
      <PaperReview findings={findings} format={format} say={say} onLead={onLead} />
      <PaperEquipment {...paper} />
      <PaperMaterials {...paper} />
      <PaperLots {...paper} />
      <PaperDeviations {...paper} />
      <div class="paper-columns">
        <div class="paper-column">
          <PaperSteps {...paper} />
          <PaperTimers {...paper} />
          <PaperSamples {...paper} />
        </div>
        <div class="paper-column">
          <PaperResults {...paper} />
          <PaperStages {...paper} />
          <PaperMass {...paper} />
        </div>
      </div>
      <PaperCurves {...paper} />
      <PaperReworks {...paper} />
      <PaperStability {...paper} />
      <PaperNotes {...paper} />
      <PaperPictures {...paper} />
      <PaperLabel {...paper} label={label} />
      <PaperSignatures {...paper} />
      <PaperMaster {...paper} />
      <PaperTrail {...paper} target={target} />
      <PaperFoot record={record} format={format} verdicts={verdicts} />
    </article>
  )
}
