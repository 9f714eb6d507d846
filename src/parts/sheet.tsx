import './sheet.css'
import type { ComponentChildren } from 'preact'
import { useId, useLayoutEffect, useRef } from 'preact/hooks'
import { Button } from './button.tsx'

interface SheetProps {
  title: string
  onClose: () => void
  children: ComponentChildren
  /** Buttons that stay in sight at the foot. */
  foot?: ComponentChildren
  wide?: boolean | undefined
  /** A long text without a field: the keyboard scrolls it. */
  reading?: boolean | undefined
  /** The word on the way out. */
  closeLabel?: string | undefined
}

/** A page over the page, on the native dialog: it keeps the focus, Escape leaves it, and the focus goes back. */
export const Sheet = ({ title, onClose, children, foot, wide, reading, closeLabel = 'Close' }: SheetProps) => {
  const ref = useRef<HTMLDialogElement>(null)
  const heading = useId()
  useLayoutEffect(() => {
    const dialog = ref.current
    const before = document.activeElement
    dialog?.showModal()
    // The heading and not a field, so that the tablet's keyboard stays away until it is wanted.
    dialog?.querySelector('h2')?.focus()
    return () => {
      dialog?.close()
      if (before instanceof HTMLElement && before.isConnected) before.focus()
    }
  }, [])
  return (
    <dialog
      ref={ref}
      class={wide ? 'sheet sheet-wide' : 'sheet'}
      aria-labelledby={heading}
      onCancel={(event) => {
        event.preventDefault()
        onClose()
      }}
    >
      <header class="sheet-head">
        <h2 id={heading} tabIndex={-1}>
          {title}
        </h2>
        <Button kind="plain" icon="x" label={closeLabel} onPress={onClose} />
      </header>
      {reading ? (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls and holds nothing to focus is focused itself
        <section class="sheet-body" aria-label={title} tabIndex={0}>
          {children}
        </section>
      ) : (
        <div class="sheet-body">{children}</div>
      )}
      {foot && <footer class="sheet-foot">{foot}</footer>}
    </dialog>
  )
}
