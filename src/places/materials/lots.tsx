import { useMemo, useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { type Format, useFormat } from '../../app/format'
import { PlainForm } from '../../app/forms/plain-form'
import type { Lot } from '../../batch/catalogue'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import type { IconName } from '../../parts/icon'
import { Notice } from '../../parts/notice'
import { Pill } from '../../parts/pill'
import { Sheet } from '../../parts/sheet'
import { adjustForm, lotForm, type MaterialsModel } from './model'
import type { LotMark, LotRow } from './stock'

/** What stands on the shelf of one material; a form opens over the page. */
export function Lots({ model, materialId }: { model: MaterialsModel; materialId: string }) {
  const app = useApp()
  const [changing, setChanging] = useState<string | null>(null)
  const [refusal, setRefusal] = useState<string | null>(null)
  const [counting, setCounting] = useState<LotRow | null>(null)
  const rows = model.lotsOf(materialId)
  return (
    <>
      {rows.length === 0 && (
        <p class="materials-hint">No lot yet. A batch can only say which lot it used if there is one.</p>
      )}
      {rows.map((row, at) => (
        <LotCard
          key={row.lot.id}
          row={row}
          first={at === 0 && row.mark === 'good' && rows.length > 1}
          onStatus={(status) => void model.setStatus(row.lot, status).then(setRefusal)}
          onChange={() => setChanging(row.lot.id)}
          onCount={() => setCounting(row)}
        />
      ))}
      {refusal && <Notice kind="over" title={refusal} live />}
      <Button icon="plus" label="Add a lot" onPress={() => setChanging(app.ids.next())} full />
      {changing && <LotSheet materialId={materialId} id={changing} onClose={() => setChanging(null)} />}
      {counting && <CountSheet row={counting} onClose={() => setCounting(null)} />}
    </>
  )
}

interface LotCardProps {
  row: LotRow
  /** Of several that may be used, the one to use first. */
  first: boolean
  onStatus: (status: Lot['status']) => void
  onChange: () => void
  onCount: () => void
}

function LotCard({ row: { lot, onHandUg, mark }, first, onStatus, onChange, onCount }: LotCardProps) {
  const format = useFormat()
  const look = marks[mark]
  return (
    <Card class="lot" label={`Lot ${lot.code}`}>
      <header class="lot-head">
        <h3>{lot.code}</h3>
        <Pill tone={look.tone} icon={look.icon} text={first ? 'use first' : look.word} />
      </header>
      <p class="lot-stock">
        <strong>{onHandUg === null ? 'reading' : format.massWithUnit(onHandUg)}</strong> on hand of{' '}
        {format.massWithUnit(lot.receivedUg)}
      </p>
      <p class="lot-facts">
        {[
          lot.supplier ?? '',
          lot.expires ? `use by ${day(lot.expires, format)}` : 'no last day of use',
          lot.retestOn ? `test again after ${day(lot.retestOn, format)}` : '',
          lot.receivedOn ? `received ${day(lot.receivedOn, format)}` : '',
          lot.assay === undefined ? '' : `assay ${format.number(lot.assay * 100)} %`,
        ]
          .filter((part) => part !== '')
          .join(' · ')}
      </p>
      {lot.adjustments?.map((each) => (
        <p key={each.at} class="lot-facts">
          {each.massUg < 0 ? '' : '+'}
          {format.massWithUnit(each.massUg)}: {each.reason} ({each.by || 'nobody named'}, {day(each.at, format)})
        </p>
      ))}
      <div class="lot-buttons">
        <Button size="small" icon="pencil" label="Change" name={`Change lot ${lot.code}`} onPress={onChange} />
        <Button
          size="small"
          icon="scale"
          label="Count stock"
          name={`Count stock of lot ${lot.code}`}
          onPress={onCount}
        />
        {lot.status === 'quarantine' && (
          <Button
            size="small"
            icon="check"
            label="Release"
            name={`Release lot ${lot.code}`}
            onPress={() => onStatus('released')}
          />
        )}
        {lot.status === 'released' && (
          <Button
            size="small"
            icon="lock"
            label="Quarantine"
            name={`Quarantine lot ${lot.code}`}
            onPress={() => onStatus('quarantine')}
          />
        )}
      </div>
    </Card>
  )
}

function LotSheet({ materialId, id, onClose }: { materialId: string; id: string; onClose: () => void }) {
  const app = useApp()
  const form = useMemo(() => lotForm(app, materialId, id), [app, materialId, id])
  const here = app.catalogue.lots.value.get(id)
  return (
    <Sheet title={here ? `Lot ${here.code}` : 'New lot'} onClose={onClose} wide>
      <PlainForm form={form} onSaved={onClose} onCancel={onClose} />
    </Sheet>
  )
}

function CountSheet({ row: { lot, onHandUg }, onClose }: { row: LotRow; onClose: () => void }) {
  const app = useApp()
  const format = useFormat()
  const form = useMemo(() => adjustForm(app, lot, onHandUg ?? 0), [app, lot, onHandUg])
  return (
    <Sheet title={`Count lot ${lot.code}`} onClose={onClose}>
      <p class="lot-stock">
        The books say {format.massWithUnit(onHandUg ?? 0)}. The difference is kept with its reason.
      </p>
      <PlainForm form={form} saveLabel="Keep the count" onSaved={onClose} onCancel={onClose} />
    </Sheet>
  )
}

const marks: Record<LotMark, { tone: 'plain' | 'caution' | 'within' | 'over'; icon: IconName; word: string }> = {
  retest: { tone: 'caution', icon: 'flask', word: 'test again' },
  good: { tone: 'within', icon: 'check', word: 'good' },
  expired: { tone: 'over', icon: 'calendar-clock', word: 'expired' },
  quarantine: { tone: 'caution', icon: 'lock', word: 'quarantine' },
  'used-up': { tone: 'plain', icon: 'minus', word: 'used up' },
  empty: { tone: 'caution', icon: 'triangle-alert', word: 'nothing left' },
}

const day = (iso: string, format: Format): string => format.date(`${iso.slice(0, 10)}T12:00:00`)
