/**
 * Puts a text on the clipboard, in a tap. By selection and the page's own copy command: the clipboard's newer door is
 * a capability of the device and may be shut, and this text has no other copy. Under an open dialog nothing else can be
 * selected, so it is done within it.
 */
export function copyText(text: string): boolean {
  const before = document.activeElement
  const area = document.createElement('textarea')
  area.value = text
  area.className = 'visually-hidden'
  area.readOnly = true
  const home = document.querySelector('dialog[open]') ?? document.body
  home.append(area)
  area.select()
  const copied = document.execCommand('copy')
  area.remove()
  if (before instanceof HTMLElement) before.focus()
  return copied
}
