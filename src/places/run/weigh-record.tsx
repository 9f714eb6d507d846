import { useFormat } from '../../app/format'
import { gateWords, sentenceOf } from '../../app/refusals'
import { RecordButton, type RecordKind } from './record-button'
import { useRun } from './run-context'

interface RecordLook {
  readonly kind: RecordKind
  readonly label: string
  readonly sub: string
}

/** Record, in its four states: short, within, over, closed. */
export function WeighRecord() {
  const run = useRun()
  const look = useRecordLook()
  return <RecordButton {...look} onPress={run.record} />
}

function useRecordLook(): RecordLook {
  const run = useRun()
  const format = useFormat()
  const { state } = run.handle.view.value
  const stepId = run.stepId.value ?? ''
  const weighing = run.weighing.value
  const net = run.net.value
  const closed = (sub: string): RecordLook => ({ kind: 'closed', label: 'Record', sub })
  if (weighing === null) return closed('nothing to weigh here')
  if (run.handle.unsaved.value.some(({ intention }) => 'step' in intention && intention.step === stepId))
    return closed('the last reading is not saved yet')
  const gate = run.gates.value[0]
  if (gate) return closed(gateWords(gate, state, format).title)
  if (net.kind === 'bad') return closed(sentenceOf(net.refusal))
  if (net.kind === 'reckoning') return closed('working out the sum')
  if (net.kind === 'wanted') return closed('type the reading before it too')
  if (state.stage !== 'in-hand') return closed('the batch is put aside')
  const mass = (massUg: number) => `${format.mass(massUg, weighing.stepUg)} g`
  const judged = run.judged.value
  if (judged === null) return { kind: 'closed', label: 'Record', sub: 'type what the balance shows' }
  const label = `Record ${mass(judged.netUg)}`
  if (run.saving.value) return { kind: 'closed', label, sub: 'saving' }
  switch (judged.state) {
    case 'to-go':
      return { kind: 'to-go', label, sub: `short by ${mass(judged.byUg)}` }
    case 'within':
      return { kind: 'within', label, sub: '' }
    case 'over':
      return { kind: 'over', label, sub: weighing.inCup ? 'then take some out' : 'then choose a way on' }
  }
}
