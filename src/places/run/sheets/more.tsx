import { addressOf } from '../../../app/routes'
import { isDone } from '../../../batch/progress'
import { Row } from '../../../parts/choice'
import { Sheet } from '../../../parts/sheet'
import type { NumberMode } from '../draft'
import { useRun } from '../run-context'
import type { SheetName } from '../run-model'
import type { SheetPartProps } from './sheet-part'

/** What is needed now and then. */
export function MoreSheet({ onClose }: SheetPartProps) {
  const run = useRun()
  const { state } = run.handle.view.value
  const step = run.stepId.value
  const open = (name: SheetName) => () => {
    run.sheet.value = { name }
  }
  return (
    <Sheet title="More" onClose={onClose}>
      <div>
        {run.weighing.value !== null && <Modes onClose={onClose} />}
        <Row icon="pencil" label="Note" sub="What you see, smell or did" onPress={open('note')} />
        <Row icon="camera" label="Picture" sub="From the camera or a file" onPress={open('picture')} />
        <Row icon="droplets" label="Spilled some" sub="Books what is gone" onPress={open('spill')} />
        <Row icon="trash" label="Discard a cup" sub="And weigh it again" onPress={open('discard-cup')} />
        {step !== null && !isDone(state, step) && (
          <Row icon="arrow-right" label="Skip this step" sub="With a reason" onPress={open('skip')} />
        )}
        {state.stage === 'in-hand' && (
          <Row
            icon="pause"
            label="Put the batch aside"
            sub="Overnight, or until something comes"
            onPress={open('park')}
          />
        )}
        <Row icon="users" label="Hand over" sub="To another person" onPress={open('hand-over')} />
        <Row icon="file-text" label="Read the record" href={addressOf({ place: 'records', batch: run.handle.id })} />
        <Row icon="flag" label="Close the batch" sub="Accept, hold, rework or reject" onPress={open('close')} />
        <Row icon="x" label="Give the batch up" sub="Everything recorded stays" onPress={open('abandon')} />
      </div>
    </Sheet>
  )
}

/** The ways of reading the balance; on a phone this is where they are. */
function Modes({ onClose }: SheetPartProps) {
  const run = useRun()
  const { mode } = run.draft.value
  const choose = (to: NumberMode) => () => {
    run.setMode(mode === to ? 're-tare' : to)
    onClose()
  }
  return (
    <>
      <Row
        icon="diff"
        label={mode === 'by-difference' ? 'Weigh plainly again' : 'Weigh by difference'}
        sub="The container before and after"
        onPress={choose('by-difference')}
      />
      <Row
        icon="plus"
        label={mode === 'cumulative' ? 'Tare before each again' : 'Cumulative'}
        sub="The pan is not tared in between"
        onPress={choose('cumulative')}
      />
    </>
  )
}
