import './bars.css'
import type { ComponentChildren } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { Button } from './button.tsx'
import { Icon } from './icon.tsx'
import { Mark } from './mark.tsx'
import { Said } from './said.tsx'

interface UndoBarProps {
  /** "Propanediol" */
  text: string
  /** "20.04 g" */
  value: string
  seconds?: number | undefined
  onUndo: () => void
  /** The time is up: take the bar away. */
  onGone: () => void
}

/** What was just recorded, for a few seconds, with a way back. Give it a key, so that a new entry starts anew. */
export const UndoBar = ({ text, value, seconds = 6, onUndo, onGone }: UndoBarProps) => {
  const [left, setLeft] = useState(seconds)
  useEffect(() => {
    if (left <= 0) {
      onGone()
      return
    }
    const timer = setTimeout(() => setLeft(left - 1), 1000)
    return () => clearTimeout(timer)
  }, [left])
  return (
    <div class="bar bar-undo">
      <Mark kind="done" size={30} />
      <p class="bar-words">
        {text} <strong>{value}</strong>
      </p>
      <Said text={`Recorded: ${text} ${value}`} />
      <Button kind="quiet" icon="undo" label={`Undo, ${Math.max(left, 0)} s`} name="Undo" onPress={onUndo} />
    </div>
  )
}

interface AlarmBarProps {
  text: string
  /** "00:31 late" */
  late?: string | undefined
  onStop: () => void
}

/** A timer that rings and waits. It stands in the strip and never covers the number. */
export const AlarmBar = ({ text, late, onStop }: AlarmBarProps) => (
  <div class="bar bar-alarm on-solid">
    <Icon name="bell-ring" size={36} />
    <p class="bar-words bar-title" role="alert">
      {text}
    </p>
    {late && <p class="bar-late">{late}</p>}
    <Button kind="caution" icon="bell-off" label="Stop the bell" onPress={onStop} />
  </div>
)

interface GateBarProps {
  title: string
  detail?: string | undefined
  /** "Go on, say why" unless another way past is offered. */
  label?: string | undefined
  /** Absent where nothing lets a person past: what is physically impossible. */
  onGoOn?: (() => void) | undefined
}

/** A step that is closed, and why; a person may pass with a reason. */
export const GateBar = ({ title, detail, label = 'Go on, say why', onGoOn }: GateBarProps) => (
  <div class="bar bar-gate">
    <Icon name="lock" size={30} />
    <BarWords title={title} detail={detail} />
    {onGoOn && <Button kind="quiet" label={label} onPress={onGoOn} />}
  </div>
)

interface NotSavedBarProps {
  title: string
  detail?: string | undefined
  onCopy: () => void
  onRetry: () => void
  /** Given where trying again cannot help: the person has seen it and lets it go. */
  onDrop?: (() => void) | undefined
}

/** An entry that stands in neither copy: it stays on the screen until it does. */
export const NotSavedBar = ({ title, detail, onCopy, onRetry, onDrop }: NotSavedBarProps) => (
  <div class="bar bar-not-saved" role="alert">
    <Icon name="triangle-alert" size={30} />
    <BarWords title={title} detail={detail} />
    <Button kind="quiet" label="Copy" onPress={onCopy} />
    {onDrop ? (
      <Button kind="quiet" label="Let it go" onPress={onDrop} />
    ) : (
      <Button kind="quiet" label="Try again" onPress={onRetry} />
    )}
  </div>
)

const BarWords = ({ title, detail }: { title: string; detail: ComponentChildren }) => (
  <p class="bar-words">
    <strong class="bar-head">{title}</strong>
    {detail && <span class="bar-detail">{detail}</span>}
  </p>
)
