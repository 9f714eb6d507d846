import { describe, expect, it } from 'vitest'
import { type TrustFactory, trustScriptUrls } from '../../../../src/app/start/trusted-urls'

const urls = { serviceWorker: './sw.js', journalWorker: 'http://localhost/assets/journal-worker.js' }

const factory = () => {
  const made: { name: string; make: (url: string) => unknown }[] = []
  const face: TrustFactory = {
    createPolicy: (name, rules) => {
      made.push({ name, make: rules.createScriptURL })
      return { createScriptURL: (url) => ({ trusted: rules.createScriptURL(url) }) }
    },
  }
  return { face, made }
}

describe('trusted script addresses', () => {
  it('[U5] come from one policy of the name that the page allows', () => {
    const { face, made } = factory()
    expect(trustScriptUrls(face, urls)).toEqual({
      serviceWorker: { trusted: urls.serviceWorker },
      journalWorker: { trusted: urls.journalWorker },
    })
    expect(made.map(({ name }) => name)).toEqual(['pannikin'])
  })

  it('[U5] are two, and any other throws', () => {
    const { face, made } = factory()
    trustScriptUrls(face, urls)
    expect(() => made[0]?.make('./other.js')).toThrow('Not a script of this app: ./other.js')
  })

  it('[U5] are plain where the browser knows no Trusted Types', () => {
    expect(trustScriptUrls(undefined, urls)).toEqual(urls)
  })
})
