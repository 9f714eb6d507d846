export interface HardwareKeys {
  /** A key press outside of any field; answer true when it meant something. */
  onKey: (key: string) => boolean
  onPaste: (text: string) => void
}

const isTyping = (target: EventTarget | null) =>
  target instanceof Element && target.closest('input, textarea, select, [contenteditable], dialog') !== null

/** Hears keys and the clipboard until the answer is called. Enter and Space stay with a focused control. */
export const hearKeys = (keysNow: () => HardwareKeys): (() => void) => {
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return
    const onControl = event.target instanceof Element && event.target.closest('button, a, summary') !== null
    if (onControl && (event.key === 'Enter' || event.key === ' ')) return
    if (keysNow().onKey(event.key)) event.preventDefault()
  }
  const onPaste = (event: ClipboardEvent) => {
    const text = event.clipboardData?.getData('text/plain').trim() ?? ''
    if (text === '' || isTyping(event.target)) return
    event.preventDefault()
    keysNow().onPaste(text)
  }
  document.addEventListener('keydown', onKeyDown)
  document.addEventListener('paste', onPaste)
  return () => {
    document.removeEventListener('keydown', onKeyDown)
    document.removeEventListener('paste', onPaste)
  }
}
