import { useFormat } from '../../../app/format'
import { Button } from '../../../parts/button'
import { useRun } from '../run-context'

/** One tap puts right what was plainly meant: 71 is 7.1. */
export function MeantButton({ meant }: { meant: number }) {
  const run = useRun()
  const text = useFormat().number(meant)
  return (
    <Button
      kind="caution"
      icon="pencil"
      label={`${text}?`}
      sub="was that meant?"
      onPress={() => run.type('value', text)}
    />
  )
}
