import './press-and-hold.css'
import { useEffect, useRef, useState } from 'preact/hooks'
import { classes } from './classes.ts'
import { Icon, type IconName } from './icon.tsx'

interface PressAndHoldProps {
  label: string
  /** How long to hold, in seconds. */
  seconds?: number | undefined
  icon?: IconName | undefined
  onDone: () => void
  full?: boolean | undefined
}

/**
 * For what cannot be undone. Hold with a finger, a mouse button, Enter or Space until the bar is full.
 * A click that comes without any press (from assistive technology) asks for a second one instead.
 */
export const PressAndHold = ({ label, seconds = 2, icon, onDone, full }: PressAndHoldProps) => {
  const [phase, setPhase] = useState<'rest' | 'holding' | 'asked'>('rest')
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined)
  const pressed = useRef(false)
  useEffect(() => () => clearTimeout(timer.current), [])

  const after = (delayMs: number, then: () => void) => {
    clearTimeout(timer.current)
    timer.current = setTimeout(() => {
      setPhase('rest')
      then()
    }, delayMs)
  }
  const begin = () => {
    if (phase === 'holding') return
    pressed.current = true
    setPhase('holding')
    after(seconds * 1000, onDone)
  }
  const letGo = () => {
    if (phase !== 'holding') return
    clearTimeout(timer.current)
    setPhase('rest')
  }
  const click = () => {
    if (pressed.current) pressed.current = false
    else if (phase === 'asked') after(0, onDone)
    else {
      setPhase('asked')
      after(5000, () => {})
    }
  }
  const isPress = (event: KeyboardEvent) => event.key === 'Enter' || event.key === ' '
  return (
    <button
      type="button"
      class={classes('button hold', phase === 'holding' && 'hold-now', full && 'button-full')}
      style={{ '--hold': `${seconds}s` }}
      onPointerDown={begin}
      onPointerUp={letGo}
      onPointerLeave={letGo}
      onPointerCancel={letGo}
      onContextMenu={(event) => event.preventDefault()}
      onBlur={letGo}
      onClick={click}
      onKeyDown={(event) => {
        if (!isPress(event)) return
        event.preventDefault()
        if (!event.repeat) begin()
      }}
      onKeyUp={(event) => {
        if (!isPress(event)) return
        event.preventDefault()
        pressed.current = false
        letGo()
      }}
    >
      {icon && <Icon name={icon} />}
      <span class="button-words">
        <span class="button-label">{label}</span>
        <span class="button-sub" aria-live="polite">
          {phase === 'asked' ? 'Press again to do it' : `Hold ${seconds} s`}
        </span>
      </span>
    </button>
  )
}
