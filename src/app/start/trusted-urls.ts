/** As much of the browser's Trusted Types factory as is needed; absent in older browsers. */
export interface TrustFactory {
  createPolicy(name: string, rules: { createScriptURL(url: string): string }): { createScriptURL(url: string): unknown }
}

declare global {
  interface Window {
    trustedTypes?: TrustFactory
  }
}

export interface ScriptUrls {
  readonly serviceWorker: string
  readonly journalWorker: string
}

/**
 * The page's only trusted script addresses, made by its only policy: anything else that asks for one throws.
 * The answers are typed as strings because the browser's own functions ask for strings; they are to be handed on as
 * they are, never joined or changed.
 */
export const trustScriptUrls = (factory: TrustFactory | undefined, urls: ScriptUrls): ScriptUrls => {
  if (factory === undefined) return urls
  const known: readonly string[] = [urls.serviceWorker, urls.journalWorker]
  const policy = factory.createPolicy('pannikin', {
    createScriptURL: (url) => {
      if (!known.includes(url)) throw new TypeError(`Not a script of this app: ${url}`)
      return url
    },
  })
  return {
    // The type library knows no TrustedScriptURL; register() and new Worker() take it where it says string.
    serviceWorker: policy.createScriptURL(urls.serviceWorker) as string,
    journalWorker: policy.createScriptURL(urls.journalWorker) as string,
  }
}
