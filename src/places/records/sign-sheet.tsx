import { useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { sentenceOf } from '../../app/refusals'
import { SignFields, useSign } from '../../app/sign/sign-fields'
import type { BatchRecord } from '../../batch/record'
import { checked, performed } from '../../batch/signing'
import { Button } from '../../parts/button'
import { Choice } from '../../parts/choice'
import { Notice } from '../../parts/notice'
import { Sheet } from '../../parts/sheet'
import type { RecordModel } from './record-model'

const meanings = [performed, checked, 'reviewed', 'reviewed and released'].map((value) => ({ value, label: value }))

interface SignSheetProps {
  record: BatchRecord
  model: RecordModel
  onClose: () => void
}

/** A signature under the record as it is shown now. */
export function SignSheet({ record, model, onClose }: SignSheetProps) {
  const app = useApp()
  const [refused, setRefused] = useState<string | null>(null)
  const sign = useSign({ meaning: 'reviewed', person: app.settings.value.value.person })
  const missing = sign.missing.value
  const send = async () => {
    // The record as it stands behind this sheet: what is written while the PIN is typed is not signed.
    const seen = record.verification.head
    const signature = await sign.give()
    if (signature === null) return
    const refusal = await model.write({ do: 'sign', signatures: { by: [signature], seen } })
    if (refusal === null) onClose()
    else setRefused(sentenceOf(refusal))
  }
  return (
    <Sheet
      title="Sign the record"
      onClose={onClose}
      foot={
        <Button
          kind={missing === null && !sign.busy.value ? 'filled' : 'closed'}
          label={sign.busy.value ? 'One moment' : 'Sign'}
          sub={missing ?? undefined}
          onPress={() => void send()}
        />
      }
    >
      <p>
        The signature covers all {record.verification.entries} entries of {record.header.code}. What is added later is
        told beside it.
      </p>
      <Choice label="As" value={sign.meaning.value} options={meanings} onChange={(as) => (sign.meaning.value = as)} />
      <SignFields sign={sign} label="Signed by" onEnter={() => void send()} />
      {refused && <Notice kind="over" title={refused} live />}
    </Sheet>
  )
}
