import { afterEach, describe, expect, it, vi } from 'vitest'

interface Rules {
  createScriptURL: (url: string) => unknown
}

const policies: string[] = []
const loaded = async (trustedTypes?: { createPolicy: (name: string, rules: Rules) => Rules }) => {
  vi.resetModules()
  vi.stubGlobal('location', { href: 'http://shop.local:4870/lumber/yard', origin: 'http://shop.local:4870' })
  vi.stubGlobal('trustedTypes', trustedTypes)
  return (await import('../../web/own-script.ts')).ownScript
}
const browser = {
  createPolicy: (name: string, rules: Rules): Rules => {
    policies.push(name)
    return rules
  },
}
afterEach(() => {
  vi.unstubAllGlobals()
  policies.length = 0
})

describe('the address of a script', () => {
  it('is one of this program’s own, by the one policy that the server’s headers allow', async () => {
    const ownScript = await loaded(browser)
    expect([ownScript('/sw.js'), ownScript('http://shop.local:4870/assets/a.js')]).toEqual([
      '/sw.js',
      'http://shop.local:4870/assets/a.js',
    ])
    expect(policies).toEqual(['own-scripts'])
  })

  it.each(['https://elsewhere.example/a.js', '//elsewhere.example/a.js', 'data:text/javascript,0', 'blob:x'])(
    'is never %s',
    async (url) => {
      const ownScript = await loaded(browser)
      expect(() => ownScript(url)).toThrow('not a script of this program')
    },
  )

  it('goes through as it is in a browser without trusted types', async () => {
    expect((await loaded())('/sw.js')).toBe('/sw.js')
  })
})
