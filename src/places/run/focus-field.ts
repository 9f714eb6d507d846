/**
 * Puts the focus into a number field once it is on the page, so that Enter and a wedge's terminator mean *record* and
 * not the button that was pressed last.
 */
export function focusField(name: string): void {
  requestAnimationFrame(() => document.querySelector<HTMLInputElement>(`input[name="${name}"]`)?.focus())
}
