/*
 * Runs before everything else, and whatever else fails: sets the theme before the first paint, and shows a way back
 * where the app does not start. The app says that it has started with <html data-started>.
 * A plain script, so that no broken build can take it along.
 */
;(() => {
  const root = document.documentElement
  const patienceMs = 8000
  const started = () => root.dataset.started !== undefined

  try {
    const theme = localStorage.getItem('pannikin.theme')
    if (theme === 'light' || theme === 'dark') root.dataset.theme = theme
  } catch {
    // Storage refused: the system's theme it is.
  }

  try {
    // The browser opens its files of this origin's databases while the app is still being read.
    indexedDB.databases().catch(() => undefined)
  } catch {
    // Storage refused, or an older browser: the app opens them itself.
  }

  // Fetched only then, and by its name alone: it stands beside this script.
  const showPanel = (reason) =>
    import('./recovery.js').then(
      ({ show }) => show(reason, started),
      () => document.body.append(`${reason} Reload.`),
    )

  addEventListener('vite:preloadError', () => showPanel('A part of the app could not be loaded.'))
  addEventListener(
    'error',
    (event) => {
      const failed = event.target
      const isPart = failed instanceof HTMLScriptElement || failed instanceof HTMLLinkElement
      if (isPart && !started()) showPanel('A part of the app could not be loaded.')
    },
    true,
  )
  setTimeout(() => {
    if (!started()) showPanel('The app has not started yet.')
  }, patienceMs)
  new MutationObserver((_, observer) => {
    if (!started()) return
    observer.disconnect()
    document.getElementById('recovery')?.remove()
  }).observe(root, { attributeFilter: ['data-started'] })
})()
