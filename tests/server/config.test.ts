import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { readConfig } from '../../server/config.ts'

describe('readConfig', () => {
  it('serves on the loopback at 4870 from ./data unless told otherwise', () => {
    const { host, port, database, demo } = readConfig({})
    expect({ host, port, database, demo }).toEqual({
      host: '127.0.0.1',
      port: 4870,
      database: resolve('data/setwright.db'),
      demo: true,
    })
  })

  it('takes what the environment says', () => {
    const env = { HOST: '0.0.0.0', PORT: '80', DATA_DIR: '/srv/x', RATE_MAX: '5', SETWRIGHT_DEMO: '0' }
    expect(readConfig(env)).toEqual({
      host: '0.0.0.0',
      port: 80,
      database: '/srv/x/setwright.db',
      rateMax: 5,
      demo: false,
    })
  })

  it('takes an empty variable as not set', () => {
    expect(readConfig({ PORT: '' }).port).toBe(4870)
  })

  it.each([
    [{ PORT: 'abc' }, 'PORT'],
    [{ PORT: '70000' }, 'PORT'],
    [{ PORT: '80.5' }, 'PORT'],
    [{ RATE_MAX: '-1' }, 'RATE_MAX'],
    [{ SETWRIGHT_DEMO: 'yes' }, 'SETWRIGHT_DEMO'],
  ])('names the variable of %j', (env, name) => {
    expect(() => readConfig(env)).toThrow(name)
  })
})
