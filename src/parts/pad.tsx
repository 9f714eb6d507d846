import './pad.css'
import { useEffect, useRef } from 'preact/hooks'
import { Icon } from './icon.tsx'
import { type DecimalMark, type PadKey, padKeyOf, typeKey } from './pad-typing.ts'
import { useHardwareKeys } from './use-hardware-keys.ts'

interface NumberPadProps {
  value: string
  onChange: (value: string) => void
  decimalMark: DecimalMark
  /** Enter on a hardware keyboard or a wedge's terminator; the pad itself has no such key. */
  onEnter?: (() => void) | undefined
  /** A row of minus and plus for sums and weighing by difference. */
  extraKeys?: boolean | undefined
  disabled?: boolean | undefined
  /** Takes hardware keys and paste from the whole page while no field has the focus. */
  listen?: boolean | undefined
  /** What the number is for: "Net mass". */
  label?: string | undefined
}

const digits = ['7', '8', '9', '4', '5', '6', '1', '2', '3'] as const
const longPressMs = 600

/** The large number pad: seven to nine on top, the decimal mark of the locale, nought, and Rub out (held: all of it). */
export const NumberPad = (props: NumberPadProps) => {
  const {
    value,
    onChange,
    decimalMark,
    onEnter,
    extraKeys,
    disabled = false,
    listen = false,
    label = 'Number pad',
  } = props
  const press = (key: PadKey) => {
    if (!disabled) onChange(typeKey(value, key, decimalMark))
  }
  useHardwareKeys(
    {
      onKey: (key) => {
        const known = padKeyOf(key)
        if (known) press(known)
        else if (key === 'Delete' || key === 'Escape') onChange('')
        else if (key === 'Enter') onEnter?.()
        else return false
        return true
      },
      onPaste: onChange,
    },
    listen && !disabled,
  )
  const key = (sign: PadKey, shown: string, name?: string) => (
    <button
      key={sign}
      type="button"
      class="pad-key"
      aria-label={name}
      aria-disabled={disabled || undefined}
      onClick={() => press(sign)}
    >
      {shown}
    </button>
  )
  return (
    <fieldset class={extraKeys ? 'pad pad-sums' : 'pad'} aria-label={label}>
      {extraKeys && key('-', '−', 'minus')}
      {extraKeys && key('+', '+', 'plus')}
      {digits.map((digit) => key(digit, digit))}
      {key('decimal', decimalMark, decimalMark === '.' ? 'point' : 'comma')}
      {key('0', '0')}
      <RubOut disabled={disabled} onPress={() => press('rub-out')} onHold={() => onChange('')} />
    </fieldset>
  )
}

interface RubOutProps {
  disabled: boolean
  onPress: () => void
  onHold: () => void
}

const RubOut = ({ disabled, onPress, onHold }: RubOutProps) => {
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined)
  const held = useRef(false)
  const stop = () => clearTimeout(timer.current)
  useEffect(() => stop, [])
  return (
    <button
      type="button"
      class="pad-key pad-rub-out"
      aria-disabled={disabled || undefined}
      onPointerDown={() => {
        held.current = false
        stop()
        timer.current = setTimeout(() => {
          held.current = true
          if (!disabled) onHold()
        }, longPressMs)
      }}
      onPointerUp={stop}
      onPointerLeave={stop}
      onPointerCancel={stop}
      onContextMenu={(event) => event.preventDefault()}
      onClick={() => {
        if (held.current) held.current = false
        else onPress()
      }}
    >
      <Icon name="delete" size={24} />
      Rub out
    </button>
  )
}
