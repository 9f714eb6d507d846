/*
 * The way back where the app does not start, or a part of it is missing: reload, or fetch the app anew. It imports nothing,
 * so that no broken build can take it along.
 */
export function show(reason, started) {
  if (document.getElementById('recovery')) return
  if (!document.body) {
    addEventListener('DOMContentLoaded', () => show(reason, started))
    return
  }
  const panel = document.createElement('section')
  panel.id = 'recovery'
  panel.setAttribute('role', 'alert')
  Object.assign(panel.style, {
    position: 'fixed',
    insetInline: '0',
    bottom: '0',
    zIndex: '9999',
    padding: '24px',
    background: 'Canvas',
    color: 'CanvasText',
    borderTop: '3px solid',
    font: '18px/1.4 system-ui, sans-serif',
  })
  const say = sentence(panel, `${reason} What you recorded is still on this tablet.`)
  sentence(
    panel,
    'Reload tries again. Recover fetches the app anew: it needs the network, and touches none of your batches.',
  )
  button(panel, 'Reload', () => location.reload())
  button(panel, 'Recover', () => recover(say))
  if (started()) button(panel, 'Close', () => panel.remove())
  document.body.append(panel)
}

// Only copies of the app itself are thrown away, and only once the server has proved that it can give them again.
async function recover(say) {
  say.textContent = 'Asking the server for the app.'
  try {
    const answer = await fetch('./sw.js', { cache: 'no-store' })
    if (!answer.ok) throw new Error(String(answer.status))
  } catch {
    say.textContent = 'The server does not answer, so nothing was changed. Go online, then press Recover again.'
    return
  }
  const registrations = (await navigator.serviceWorker?.getRegistrations()) ?? []
  const folder = new URL('./', location.href).href
  await Promise.all(registrations.filter((each) => each.scope === folder).map((each) => each.unregister()))
  const names = await caches.keys()
  await Promise.all(names.filter((name) => name.endsWith(folder)).map((name) => caches.delete(name)))
  location.reload()
}

function sentence(panel, text) {
  const line = document.createElement('p')
  line.textContent = text
  line.style.margin = '0 0 12px'
  panel.append(line)
  return line
}

function button(panel, label, act) {
  const made = document.createElement('button')
  made.type = 'button'
  made.textContent = label
  Object.assign(made.style, { minHeight: '56px', minWidth: '112px', marginInlineEnd: '12px', font: 'inherit' })
  made.addEventListener('click', act)
  panel.append(made)
}
