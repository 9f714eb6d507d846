export type Inks = ReturnType<typeof readInks>

/** Colours and font as they stand now: a canvas knows no custom properties, and no light-dark(). */
export function readInks(host: HTMLElement) {
  const probe = document.createElement('span')
  host.append(probe)
  const style = getComputedStyle(probe)
  const seen = (colour: string): string => {
    probe.style.color = colour
    return style.color
  }
  const inks = {
    ink: seen('var(--ink)'),
    quiet: seen('var(--quiet)'),
    rule: seen('var(--rule)'),
    edge: seen('var(--edge)'),
    card: seen('var(--card)'),
    rim: seen('var(--rim)'),
    band: seen('color-mix(in srgb, var(--rim) 20%, transparent)'),
    within: seen('var(--within)'),
    withinWash: seen('var(--within-wash)'),
    font: style.fontFamily,
  }
  probe.remove()
  return inks
}

/** Calls back when the theme, the contrast or the font has changed. The answer ends the watching. */
export function watchInks(changed: () => void): () => void {
  const root = new MutationObserver(changed)
  root.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] })
  const queries = ['(prefers-color-scheme: dark)', '(prefers-contrast: more)', '(forced-colors: active)'].map((query) =>
    matchMedia(query),
  )
  for (const query of queries) query.addEventListener('change', changed)
  document.fonts.addEventListener('loadingdone', changed)
  return () => {
    root.disconnect()
    for (const query of queries) query.removeEventListener('change', changed)
    document.fonts.removeEventListener('loadingdone', changed)
  }
}
