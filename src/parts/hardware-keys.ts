export interface HardwareKeys {
  /** A key press outside of any field; answer true when it meant something. */
  onKey: (key: string) => boolean
  onPaste: (text: string) => void
}

const isTyping = (target: EventTarget | null) =>
  target instanceof Element && target.closest('input, textarea, select, [contenteditable], dialog') !== null

/**
 * Hears keys and the clipboard until the answer is called. Enter and Space stay with a focused control; but an Enter
 * behind digits ends the number, whatever was pressed last and kept the focus: so a wedge closes its reading.
 */
export const hearKeys = (keysNow: () => HardwareKeys): (() => void) => {
  /** Where the focus was when the last digit came. */
  let typedAt: EventTarget | null = null
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return
    const onControl = event.target instanceof Element && event.target.closest('button, a, summary') !== null
    const ends = event.key === 'Enter' && typedAt === event.target
    // A wedge may send a unit between the digits and its Enter.
    if (/^\d$/.test(event.key)) typedAt = event.target
    else if (event.key === 'Tab' || event.key === 'Enter') typedAt = null
    if (onControl && !ends && (event.key === 'Enter' || event.key === ' ')) return
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
