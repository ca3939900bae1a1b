import { spawnSync } from 'node:child_process'
import { existsSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { describe, expect, it } from 'vitest'
import { root } from '../files.ts'

const load = (file: string): Promise<any> => import(pathToFileURL(join(root, 'server/setup', file)).href)

describe('the set-up', () => {
  it.each(['20.19.0', '20.20.2', '22.12.0', '22.23.3', '23.1.0', '24.21.0'])(
    'runs on Node %s',
    async (version) => {
      const { checkNode } = await load('install.mjs')
      expect(() => checkNode(version)).not.toThrow()
    },
  )

  it.each(['18.20.0', '20.18.3', '21.7.0', '22.11.0'])('refuses Node %s in one sentence', async (version) => {
    const { checkNode } = await load('install.mjs')
    expect(() => checkNode(version)).toThrow(
      new RegExp(
        `^Setwright needs Node 20\\.19 or later .*this is Node ${version.replaceAll('.', '\\.')}\\.$`,
      ),
    )
  })

  it('says what it takes when it is asked for something else', () => {
    const { status, stderr } = spawnSync(process.execPath, [join(root, 'server/setup.mjs'), 'polish'], {
      encoding: 'utf8',
    })
    expect([status, stderr]).toEqual([2, 'node server/setup.mjs takes install, build, test; read polish\n'])
  })

  it('does nothing and says nothing when everything is in place', () => {
    const install = () =>
      spawnSync(process.execPath, [join(root, 'server/setup.mjs'), 'install'], { encoding: 'utf8' })
    install()
    expect(install()).toMatchObject({ status: 0, stdout: '', stderr: '' })
  })

  it('lets one set-up of a checkout at a time at it', async () => {
    const { alone } = await load('lock.mjs')
    const order: string[] = []
    const said: string[] = []
    const work = (name: string) => async () => {
      order.push(`${name} begins`)
      await new Promise((resolve) => setTimeout(resolve, 30))
      order.push(`${name} ends`)
    }
    await Promise.all([
      alone((text: string) => said.push(text), work('a')),
      alone((text: string) => said.push(text), work('b')),
    ])
    expect(order).toEqual(['a begins', 'a ends', 'b begins', 'b ends'])
    expect(said).toHaveLength(1)
  })

  it('takes over from a set-up that died at its work', async () => {
    const { alone, lockFile } = await load('lock.mjs')
    const dead = spawnSync(process.execPath, ['--version']).pid
    writeFileSync(lockFile, String(dead))
    expect(
      await alone(
        () => undefined,
        () => Promise.resolve('done'),
      ),
    ).toBe('done')
    expect(existsSync(lockFile)).toBe(false)
  })
})
