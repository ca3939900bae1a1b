import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { root } from '../files.ts'
import { benchLeg, dowel } from '../jobs.ts'
import { newKey } from './serving.ts'

const folder = mkdtempSync(join(tmpdir(), 'setwright-built-'))
/** Where a database would be made by whoever makes one against the rules. */
const untouched = join(folder, 'untouched')
const running = new Set<ChildProcess>()
afterAll(() => {
  for (const child of running) child.kill('SIGKILL')
  rmSync(folder, { recursive: true, force: true })
})

/** The command line as the person calls it, from a folder of their own. */
function setwright(
  args: string[],
  { input, here = folder }: { input?: string | Buffer; here?: string } = {},
) {
  const env = { ...process.env, INIT_CWD: here, DATA_DIR: untouched }
  return spawnSync(process.execPath, [join(root, 'server/setwright.mjs'), ...args], {
    cwd: root,
    env,
    input,
    encoding: 'utf8',
    maxBuffer: 1e9,
  })
}

interface Server {
  child: ChildProcess
  address: string
  said: () => string
}

/** The built server, once it prints its address. */
function serve(env: Record<string, string>): Promise<Server> {
  const child = spawn(process.execPath, [join(root, 'dist/server/main.js')], {
    cwd: folder,
    env: { ...process.env, SETWRIGHT_DEMO: '0', ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  running.add(child)
  let said = ''
  return new Promise((resolve, reject) => {
    const hear = (chunk: Buffer) => {
      said += String(chunk)
      const address = /Setwright is at (http:\S+)/.exec(said)?.[1]
      if (address) resolve({ child, address, said: () => said })
    }
    child.stdout!.on('data', hear)
    child.stderr!.on('data', hear)
    child.once('exit', (code) => reject(new Error(`ended with ${code}: ${said}`)))
  })
}

async function stop({ child }: Server): Promise<number | null> {
  const ended = once(child, 'exit')
  child.kill('SIGTERM')
  const [code] = await ended
  running.delete(child)
  return code as number | null
}

const ask = async (address: string, path: string, body?: unknown) => {
  const answer = await fetch(
    address + path,
    body === undefined
      ? {}
      : { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) },
  )
  return { status: answer.status, body: (await answer.json()) as any }
}

beforeAll(() => {
  const { status, stderr } = setwright(['--version'])
  expect(status, stderr).toBe(0)
}, 120_000)

describe('the built command line', () => {
  it('answers on stdout alone, and reads files from where the person stands', () => {
    writeFileSync(join(folder, 'leg.json'), JSON.stringify(benchLeg()))
    const { status, stdout, stderr } = setwright(['plan', 'leg.json', '--json'])
    expect([status, stderr]).toEqual([0, ''])
    expect(JSON.parse(stdout).job.name).toBe('Reading bench legs')
  })

  it('runs by its built file too, and ends with what the command ends with', () => {
    const main = join(root, 'dist/server/cli/main.js')
    const by = (args: string[]) =>
      spawnSync(process.execPath, [main, ...args], { cwd: folder, encoding: 'utf8' })
    writeFileSync(join(folder, 'dowel.json'), JSON.stringify(dowel()))
    const { status, stdout } = by(['plan', 'dowel.json'])
    expect([status, stdout]).toEqual([0, expect.stringMatching(/^RAIL DOWELS\n/)])
    expect(by([]).status).toBe(2)
    expect(by(['plan', 'none.json']).status).toBe(2)
  })

  it('reads standard input', () => {
    const { status, stdout } = setwright(['plan', '-', '--json'], { input: JSON.stringify(dowel()) })
    expect(status).toBe(0)
    expect(JSON.parse(stdout).part.length).toBe(400)
  })

  it('searches a cut in a thread of its own and comes to an end', () => {
    const order = {
      units: 'mm',
      kerf: 3,
      endTrim: 10,
      edgeTrim: 2,
      seconds: 1,
      blanks: [{ key: 'a', side: 40, length: 300, count: 30 }],
      boards: [{ key: 'b', width: 150, length: 2000, thickness: 45, count: null }],
    }
    const { status, stdout, stderr } = setwright(['cut', '-', '--json'], { input: JSON.stringify(order) })
    expect([status, stderr]).toEqual([0, ''])
    expect(JSON.parse(stdout).unmet).toEqual([])
  })

  it.each([
    ['50 MB', Buffer.alloc(50_000_000, 0x20), /larger than 5 MB/],
    ['nothing', '', /empty/],
    ['half a file', JSON.stringify(dowel()).slice(0, 50), /not JSON at line 1, column 51/],
    ['Latin-1', Buffer.from('{"name": "Åse"}', 'latin1'), /standard input: is not UTF-8 text/],
    ['a wrong value', JSON.stringify({ ...dowel(), quantity: 'six' }), /^quantity: /],
  ])('refuses %s on standard input with exit 2 and no trace', (_, input, says) => {
    const { status, stdout, stderr } = setwright(['plan', '-', '--json'], { input })
    expect([status, stdout]).toEqual([2, ''])
    expect(stderr).toMatch(says)
    expect(stderr).not.toMatch(/\n\s+at |node:|\.js:\d/)
  })

  it('never makes a database for a plan, a cut or a match', () => {
    for (const verb of ['plan', 'cut', 'match']) setwright([verb, '-'], { input: '{}' })
    expect(existsSync(untouched)).toBe(false)
    expect(setwright(['export', '-']).status).toBe(0)
    expect(existsSync(untouched)).toBe(true)
  })
})

describe('the built server', () => {
  it('plans very many stations in a thread of its own, and answers others meanwhile', async () => {
    const server = await serve({ PORT: '0', DATA_DIR: join(folder, 'long') })
    const stations = Array.from({ length: 2000 }, (_, i) => ({ at: i * 5, diameter: 30 + (i % 3) }))
    const long = { ...dowel(), profile: { stations } }
    const answered: string[] = []
    const plan = ask(server.address, '/api/plan', long).then((answer) => {
      answered.push('plan')
      return answer
    })
    const refused = ask(server.address, '/api/plan', { ...long, species: 'moonwood' })
    const health = ask(server.address, '/api/health').then(() => answered.push('health'))
    const [{ status, body }, bad] = await Promise.all([plan, refused, health])
    expect(answered).toEqual(['health', 'plan'])
    expect([status, body.part.length]).toEqual([200, 1999 * 5])
    expect([bad.status, bad.body.errors[0].path]).toEqual([422, 'species'])
    expect(await stop(server)).toBe(0)
  })

  it('keeps everything over a restart, and ends when it is asked to', async () => {
    const data = join(folder, 'kept')
    const env = { DATA_DIR: data, PORT: '0' }
    const first = await serve(env)
    const key = newKey()
    const file = { ...benchLeg(), customer: 'Åse ½″ "quoted"' }
    const { body: job } = await ask(first.address, '/api/jobs', { ...file, key })
    const { body: pieces } = await ask(first.address, `/api/jobs/${key}/start`, { key: newKey() })
    const reading = {
      key: newKey(),
      piece: pieces[0].id,
      station: 's2',
      value: '1 1/4',
      at: '2026-06-01T08:00:00Z',
    }
    await ask(first.address, `/api/jobs/${key}/checks`, reading)
    const { body: plan } = await ask(first.address, `/api/jobs/${key}/plan`)
    // Someone who listens for changes must not hold the server up.
    const listening = await fetch(`${first.address}/api/events`)
    expect(await stop(first)).toBe(0)
    await listening.text().catch(() => '')

    const second = await serve(env)
    expect((await ask(second.address, `/api/jobs/${key}`)).body).toMatchObject({
      ...file,
      state: 'started',
      createdAt: job.createdAt,
    })
    expect((await ask(second.address, `/api/jobs/${key}/plan`)).body).toEqual(plan)
    expect((await ask(second.address, `/api/jobs/${key}/pieces`)).body).toEqual(pieces)
    expect((await ask(second.address, `/api/jobs/${key}/checks`)).body).toHaveLength(1)
    const again = await ask(second.address, `/api/jobs/${key}/checks`, reading)
    expect([again.status, (await ask(second.address, `/api/jobs/${key}/checks`)).body.length]).toEqual([
      201, 1,
    ])
    expect(await stop(second)).toBe(0)
  }, 60_000)

  it('keeps what it has answered even when it is killed', async () => {
    const env = { DATA_DIR: join(folder, 'killed'), PORT: '0' }
    const first = await serve(env)
    const key = newKey()
    await ask(first.address, '/api/jobs', { ...dowel(), key })
    const ended = once(first.child, 'exit')
    first.child.kill('SIGKILL')
    await ended
    running.delete(first.child)
    const second = await serve(env)
    expect((await ask(second.address, `/api/jobs/${key}`)).status).toBe(200)
    await stop(second)
  }, 60_000)

  it('takes the next free port when its own is taken, and says so', async () => {
    const first = await serve({ DATA_DIR: join(folder, 'a'), PORT: '0' })
    const port = Number(new URL(first.address).port)
    const second = await serve({ DATA_DIR: join(folder, 'b'), PORT: String(port) })
    expect(Number(new URL(second.address).port)).toBeGreaterThan(port)
    expect(second.said()).toContain(`Port ${port} is taken`)
    expect((await ask(second.address, '/api/health')).body).toMatchObject({ status: 'ok' })
    await stop(second)
    await stop(first)
  }, 60_000)

  it('fills an empty database with the demo unless told not to', async () => {
    const shown = await serve({ DATA_DIR: join(folder, 'demo'), PORT: '0', SETWRIGHT_DEMO: '1' })
    expect((await ask(shown.address, '/api/jobs')).body).toHaveLength(4)
    await stop(shown)
  }, 60_000)

  it('says which setting it cannot use', () => {
    const { status, stderr } = spawnSync(process.execPath, [join(root, 'dist/server/main.js')], {
      cwd: folder,
      env: { ...process.env, PORT: 'eight' },
      encoding: 'utf8',
    })
    expect([status, stderr]).toEqual([2, expect.stringMatching(/^PORT: must be a number; read/)])
  })
})
