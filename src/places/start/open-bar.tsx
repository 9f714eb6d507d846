import { sentenceOf } from '../../app/refusals'
import { Button } from '../../parts/button'
import { Notice } from '../../parts/notice'
import type { StartModel } from './model'

/** Opens the batch, once everything is settled; until then it says what is not. */
export const OpenBar = ({ model }: { model: StartModel }) => {
  const refusal = model.refusal.value
  const ready = model.readyToOpen.value
  return (
    <div class="start-open">
      {refusal && <Notice kind="over" title={sentenceOf(refusal)} live />}
      <Button
        kind={ready && !model.opening.value ? 'filled' : 'closed'}
        size="primary"
        label="Open the batch"
        sub={ready ? undefined : whyNot(model)}
        onPress={() => void model.open()}
        class={ready ? undefined : 'start-open-closed'}
        full
      />
      <span class="visually-hidden" role="status">
        {ready ? 'The batch can be opened' : ''}
      </span>
    </div>
  )
}

function whyNot(model: StartModel): string {
  if (model.sizeRefusal.value || model.sizeUg.value === null) return 'the size first'
  const [wrong] = model.wrong.value
  if (wrong) return `something in ${wrong} cannot be read`
  const count = model.cards.value.length
  return count === 1 ? '1 thing to settle first' : `${count} things to settle first`
}
