import type { Badge } from '../../ports/badge'

/** The count in front of the page's title, and on the app's icon where the browser can. */
export const webBadge = (title: string): Badge => ({
  show: (count) => {
    document.title = count === 0 ? title : `(${count}) ${title}`
    // Refused where the app is not installed: the title then says it alone.
    navigator.setAppBadge?.(count).catch(() => undefined)
  },
})
