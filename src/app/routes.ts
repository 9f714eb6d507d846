import { signal } from '@preact/signals'

/** Places of the app. Kept in the address's hash, so that any static host in any folder can serve it. */
export type Route =
  | { readonly place: 'bench' }
  | { readonly place: 'start'; readonly formula?: string }
  | { readonly place: 'run'; readonly batch: string; readonly step?: string | undefined }
  /** With a batch: what of that batch, as it was made, goes into the next revision. */
  | { readonly place: 'formulas'; readonly formula?: string; readonly batch?: string }
  | { readonly place: 'materials'; readonly material?: string }
  /** `part`: its kept jars, or one of them. With `pulls` in the place of a batch: the jars of all batches. */
  | { readonly place: 'records'; readonly batch?: string; readonly part?: string }
  | { readonly place: 'setup'; readonly section?: string }

const detailOf = (route: Route): readonly (string | undefined)[] => {
  switch (route.place) {
    case 'bench':
      return []
    case 'start':
      return [route.formula]
    case 'formulas':
      return [route.formula, route.batch]
    case 'run':
      return [route.batch, route.step]
    case 'materials':
      return [route.material]
    case 'records':
      return [route.batch, route.part]
    case 'setup':
      return [route.section]
  }
}

/** The address of a place, e.g. `#/run/0190…`. */
export function addressOf(route: Route): string {
  const parts = [route.place, ...detailOf(route)].filter((part): part is string => part !== undefined)
  return `#/${parts.map(encodeURIComponent).join('/')}`
}

/** The place of an address; an unknown one is the bench. */
export function routeOf(hash: string): Route {
  const [place, first, second] = hash.replace(/^#\/?/, '').split('/').map(decodePart)
  switch (place) {
    case 'start':
      return first ? { place, formula: first } : { place }
    case 'run':
      return first ? { place, batch: first, ...(second ? { step: second } : {}) } : { place: 'bench' }
    case 'formulas':
      return first ? { place, formula: first, ...(second ? { batch: second } : {}) } : { place }
    case 'materials':
      return first ? { place, material: first } : { place }
    case 'records':
      return first ? { place, batch: first, ...(second ? { part: second } : {}) } : { place }
    case 'setup':
      return first ? { place, section: first } : { place }
    default:
      return { place: 'bench' }
  }
}

/** Follows the address; `go` changes it (and the back button works). */
export function createRouter(window: Window) {
  const route = signal(routeOf(window.location.hash))
  window.addEventListener('hashchange', () => {
    route.value = routeOf(window.location.hash)
  })
  return {
    route,
    go(to: Route): void {
      window.location.hash = addressOf(to)
    },
  }
}

function decodePart(part: string): string {
  try {
    return decodeURIComponent(part)
  } catch {
    return ''
  }
}
