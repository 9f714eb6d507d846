import { useEffect, useRef } from 'preact/hooks'

interface HardwareKeys {
  /** A key press outside of any field; answer true when it meant something. */
  onKey: (key: string) => boolean
  onPaste: (text: string) => void
}

const isTyping = (target: EventTarget | null) =>
  target instanceof Element && target.closest('input, textarea, select, [contenteditable], dialog') !== null

/**
 * A keyboard, a keyboard wedge and the clipboard reach the number in hand without a field holding the focus. Enter and
 * Space stay with a focused control, so that a wedge's terminator never presses it by itself.
 */
export const useHardwareKeys = (keys: HardwareKeys, active: boolean) => {
  const latest = useRef(keys)
  latest.current = keys
  useEffect(() => {
    if (!active) return
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return
      const onControl = event.target instanceof Element && event.target.closest('button, a, summary') !== null
      if (onControl && (event.key === 'Enter' || event.key === ' ')) return
      if (latest.current.onKey(event.key)) event.preventDefault()
    }
    const onPaste = (event: ClipboardEvent) => {
      const text = event.clipboardData?.getData('text/plain').trim() ?? ''
      if (text === '' || isTyping(event.target)) return
      event.preventDefault()
      latest.current.onPaste(text)
    }
    document.addEventListener('keydown', onKeyDown)
    document.addEventListener('paste', onPaste)
    return () => {
      document.removeEventListener('keydown', onKeyDown)
      document.removeEventListener('paste', onPaste)
    }
  }, [active])
}
