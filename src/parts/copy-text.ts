/**
 * Puts a text on the clipboard, in a tap. By selection and the page's own copy command: the clipboard's newer door is
 * a capability of the device and may be shut, and this text has no other copy.
 */
export function copyText(text: string): boolean {
  const area = document.createElement('textarea')
  area.value = text
  area.className = 'visually-hidden'
  area.readOnly = true
  document.body.append(area)
  area.select()
  const copied = document.execCommand('copy')
  area.remove()
  return copied
}
