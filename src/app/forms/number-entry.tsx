import type { ComponentProps } from 'preact'
import { useRef } from 'preact/hooks'
import { NumberField } from '../../parts/number-field.tsx'
import { useApp } from '../app.ts'
import { settleText } from './settle-typed.ts'
import { useSettled } from './use-settled.ts'

/**
 * A number field in which a sum, or a figure in another unit than the field's, may be typed: it says what that comes to,
 * and puts it there when it is left.
 */
export function NumberEntry(props: ComponentProps<typeof NumberField>) {
  const { value, onChange, unit = '', hint, error, onEnter } = props
  const mark = useApp().settings.decimalMark.value
  const settled = useSettled(value, unit)
  const now = useRef(value)
  now.current = value
  const settle = async () => {
    const plain = await settleText(value, unit, mark)
    // Who types on meanwhile is not overwritten.
    if (plain !== value && now.current === value) onChange(plain)
  }
  return (
    <NumberField
      {...props}
      hint={settled ?? hint}
      error={settled === null ? error : undefined}
      onLeave={() => void settle()}
      onEnter={onEnter && (() => void settle().then(onEnter))}
    />
  )
}
