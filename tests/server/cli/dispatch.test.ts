import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { planSchema } from '../../../shared/contract/plan.ts'
import { cutBreaches } from '../../../shared/cutting/check.ts'
import { readCutOrder } from '../../../shared/cutting/order.ts'
import { badJobs, badTexts } from '../../bad-jobs.ts'
import { benchLeg, dowel, fortyStations, knob } from '../../jobs.ts'
import { cli } from './run.ts'

const here = mkdtempSync(join(tmpdir(), 'setwright-cli-'))
afterAll(() => rmSync(here, { recursive: true }))

function file(name: string, content: unknown): string {
  writeFileSync(join(here, name), typeof content === 'string' ? content : JSON.stringify(content))
  return name
}

const order = {
  units: 'in',
  kerf: '1/8',
  endTrim: '1',
  edgeTrim: '1/8',
  seconds: 1,
  blanks: [{ key: 'leg', side: '2 7/16', length: '17 3/4', count: 9 }],
  boards: [{ key: 'A', width: '8 1/4', length: '8 ft', thickness: '2 1/2', count: 4 }],
}
const set = {
  units: 'mm',
  stations: [{ key: 'bead', target: 30, plus: 0.5, minus: 0.5 }],
  pieces: [
    { key: 'a', readings: { bead: 30.1 } },
    { key: 'b', readings: { bead: 29 } },
  ],
}

/** Words that mark the trace of a failure of ours. */
const trace = /\n\s+at |node_modules|\.ts:\d|\.js:\d/

describe('setwright plan', () => {
  it.each([
    ['leg', benchLeg()],
    ['dowel', dowel()],
    ['knob', knob()],
    ['newel', fortyStations()],
  ])('prints the plan of a %s as JSON and nothing else', async (name, job) => {
    const { code, out, err } = await cli(['plan', file(`${name}.json`, job), '--json'], here)
    expect([code, err]).toEqual([0, ''])
    expect(planSchema.safeParse(JSON.parse(out)).error).toBeUndefined()
  })

  it('takes the flag before or after the file', async () => {
    file('leg.json', benchLeg())
    const before = await cli(['plan', '--json', 'leg.json'], here)
    const after = await cli(['plan', 'leg.json', '--json'], here)
    expect(before).toEqual(after)
  })

  it.each([
    ['leg', benchLeg()],
    ['dowel', dowel()],
    ['knob', knob()],
    ['newel', fortyStations()],
  ])('writes the plan of a %s for a person, within 80 columns', async (name, job) => {
    const { code, out } = await cli(['plan', file(`${name}.json`, job)], here)
    expect(code).toBe(0)
    for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80)
    for (const part of ['PART', 'BLANK', 'LUMBER', 'ORDER OF WORK', 'SHARPENING', 'TIME', 'PRICE'])
      expect(out).toContain(part)
    expect(out).not.toMatch(/undefined|NaN|null|\[object/)
  })

  it('takes a byte order mark for what it is', async () => {
    const { code, out } = await cli(['plan', file('mark.json', `\ufeff${JSON.stringify(dowel())}`)], here)
    expect([code, out.slice(0, 11)]).toEqual([0, 'RAIL DOWELS'])
  })

  it('tells movement and sag in the units that lengths are told in', async () => {
    const { whip, movement } = JSON.parse(
      (await cli(['plan', file('dry.json', { ...dowel(), serviceMoisture: 12 }), '--json'], here)).out,
    ).part
    const inches = (await cli(['plan', 'dry.json', '--units', 'in'], here)).out.replace(/\s+/g, ' ')
    const metric = (await cli(['plan', 'dry.json'], here)).out.replace(/\s+/g, ' ')
    expect(metric).toContain(`sags ${whip.sag.toFixed(2)} mm under 10 N`)
    expect(inches).toContain(`sags ${(whip.sag / 25.4).toFixed(3)} in under 10 N`)
    expect(metric).toContain(`largest diameter ${movement.tangential.toFixed(2)} mm tangential`)
    expect(inches).toContain(`largest diameter ${(movement.tangential / 25.4).toFixed(3)} in tangential`)
    expect(inches).toContain(`${(movement.outOfRound / 25.4).toFixed(3)} in out of round`)
    expect(movement.outOfRound).toBeGreaterThan(0.05)
  })

  it('writes lengths in the job’s units unless told otherwise', async () => {
    file('leg.json', benchLeg())
    const inches = (await cli(['plan', 'leg.json'], here)).out
    const metric = (await cli(['plan', 'leg.json', '--units', 'mm'], here)).out
    expect(inches).toMatch(/length +16-1\/2 in/)
    expect(metric).toMatch(/length +419\.1 mm/)
    expect(metric).toContain('caliper')
  })

  it('plans in the shop of --shop', async () => {
    file('dowel.json', dowel())
    const side = async (flags: string[]) =>
      JSON.parse((await cli(['plan', 'dowel.json', '--json', ...flags], here)).out).blank.side
    const wide = file('shop.json', { units: 'mm', allowances: { rounding: 10 } })
    expect(await side(['--shop', wide])).toBe((await side([])) + 7)
    const bad = await cli(['plan', 'dowel.json', '--shop', file('bad-shop.json', { kerf: 'x' })], here)
    expect([bad.code, bad.err]).toEqual([2, expect.stringMatching(/^kerf: /)])
  })

  it.each(
    badJobs
      .filter(({ file: f }) => JSON.stringify(f).length < 5_000_000)
      .map(({ what, ...bad }) => [what, bad] as const),
  )('refuses %s with exit 2, naming the field', async (_, bad) => {
    const { code, out, err } = await cli(['plan', file('bad.json', bad.file), '--json'], here)
    expect([code, out]).toEqual([2, ''])
    const paths = err.split('\n').map((line) => /^([\w.[\]]+): /.exec(line)?.[1] ?? '')
    expect(
      paths.some((path) => bad.path.test(path)),
      err,
    ).toBe(true)
    if (bad.says) expect(err).toMatch(bad.says)
    expect(err).not.toMatch(trace)
  })
})

describe('a file that cannot be read', () => {
  it.each([
    ['is not there', 'none.json', () => {}, /none\.json: there is no such file/],
    ['is a folder', 'folder', () => mkdirSync(join(here, 'folder')), /folder: is a folder/],
    ['is empty', 'empty.json', () => file('empty.json', ''), /empty\.json: is empty/],
    [
      'is not JSON',
      'text.json',
      () => file('text.json', '{"name": "x",\n  quantity: 4}'),
      /text\.json: is not JSON at line 2, column 3/,
    ],
    [
      'is larger than 5 MB',
      'large.json',
      () => file('large.json', ' '.repeat(5_000_001)),
      /large\.json: is larger than 5 MB/,
    ],
    [
      'is binary',
      'picture.json',
      () => writeFileSync(join(here, 'picture.json'), Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2])),
      /picture\.json: is not UTF-8 text: line 1 /,
    ],
    [
      'is Latin-1',
      'latin.json',
      () => writeFileSync(join(here, 'latin.json'), Buffer.from('{\n"name": "Åse"}', 'latin1')),
      /latin\.json: is not UTF-8 text: line 2 /,
    ],
    [
      'is UTF-16',
      'wide.json',
      () => writeFileSync(join(here, 'wide.json'), Buffer.from('\ufeff{"name": "x"}', 'utf16le')),
      /wide\.json: is not UTF-8 text but UTF-16/,
    ],
    [
      'gives a field twice',
      'twice.json',
      () => file('twice.json', '{"units": "in",\n"quantity": 8,\n"quantity": 9}'),
      /^quantity: is given twice, at lines 2 and 3/,
    ],
  ])('because it %s is refused with exit 2 and the reason', async (_, name, make, says) => {
    make()
    for (const verb of ['plan', 'cut', 'match']) {
      rmSync(join(here, 'never'), { force: true })
      const { code, out, err } = await cli([verb, name, '--json'], here)
      expect([code, out]).toEqual([2, ''])
      expect(err).toMatch(says)
      expect(err).not.toMatch(trace)
    }
  })
})

describe('text that is no job at all', () => {
  it.each(badTexts.map(({ what, text }) => [what, text] as const))(
    'is refused with exit 2: %s',
    async (_, text) => {
      const { code, out, err } = await cli(['plan', file('no-job.json', text()), '--json'], here)
      expect([code, out]).toEqual([2, ''])
      expect(err).toMatch(/^no-job\.json: .{10}/)
      expect(err).not.toMatch(trace)
    },
  )
})

describe('setwright cut', () => {
  it('prints the cutting plan as JSON, or for a person', async () => {
    file('order.json', order)
    const { code, out } = await cli(['cut', 'order.json', '--json'], here)
    expect(code).toBe(0)
    expect(cutBreaches(readCutOrder(order), JSON.parse(out))).toEqual([])
    const { out: text } = await cli(['cut', 'order.json'], here)
    expect(text).toMatch(/1 board A .*rip first|1 board A .*crosscut first/)
    for (const line of text.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80)
  })

  it('tells what cannot be cut', async () => {
    file('short.json', { ...order, boards: [{ ...order.boards[0], count: 1, length: '2 ft' }] })
    expect((await cli(['cut', 'short.json'], here)).out).toMatch(/6 blanks leg cannot be cut/)
  })

  it('says that no boards were given', async () => {
    file('bare.json', { ...order, boards: [] })
    const { code, out } = await cli(['cut', 'bare.json'], here)
    expect([code, out]).toEqual([0, expect.stringContaining('No boards were given')])
  })

  it('takes kerf and trims from the shop when one is given', async () => {
    const { kerf: _, endTrim: __, ...rest } = order
    file('rest.json', rest)
    expect((await cli(['cut', 'rest.json'], here)).err).toMatch(/^kerf: .*read nothing\nendTrim: /)
    expect((await cli(['cut', 'rest.json', '--shop', file('shop.json', {})], here)).code).toBe(0)
  })
})

describe('setwright match', () => {
  it('prints the match as JSON, or for a person', async () => {
    file('set.json', set)
    const { code, out } = await cli(['match', 'set.json', '--json'], here)
    expect(code).toBe(0)
    expect(JSON.parse(out).bringDown.targets).toEqual({ bead: 29 })
    const { out: text } = await cli(['match', 'set.json'], here)
    expect(text).toContain('New targets: bead to 29.0 mm')
    expect(text).toMatch(/a at bead: take 1\.10 mm off the diameter/)
    for (const line of text.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80)
  })
})

describe('names that would steer a terminal', () => {
  const odd = 'x\u001b[2J\u0007\u009b1m\u202e\ny'
  const steers = /[^\P{Cc}\n]|[\u202a-\u202e\u2066-\u2069]/u
  const leg = { ...benchLeg(), name: `Legs ${odd}`, customer: odd }
  const stations = leg.profile.stations.map((station) => ({ ...station, name: `${station.at} ${odd}` }))

  it.each([
    ['a job', 'plan', { ...leg, profile: { stations } }],
    [
      'an order',
      'cut',
      { ...order, blanks: [{ ...order.blanks[0], key: odd }], boards: [{ ...order.boards[0], key: odd }] },
    ],
    [
      'an order that cannot be met',
      'cut',
      { ...order, blanks: [{ ...order.blanks[0], key: odd }], boards: [] },
    ],
    [
      'a set',
      'match',
      {
        ...set,
        stations: [{ ...set.stations[0], key: odd }],
        pieces: [
          { key: `${odd}1`, readings: { [odd]: 30.1 } },
          { key: `${odd}2`, readings: { [odd]: 29 } },
        ],
        choose: 1,
      },
    ],
    ['a file with a wrong field', 'plan', { ...dowel(), [odd]: 1, species: odd, mount: odd }],
  ])('are written out: in %s', async (_, verb, content) => {
    const name = file('odd.json', content)
    const { out, err } = await cli([verb, name], here)
    expect(out + err).toContain('x\\u001b[2J\\u0007\\u009b1m\\u202e\\n')
    expect(out + err).not.toMatch(steers)
    for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80)
    expect((await cli([verb, name, '--json'], here)).out).not.toMatch(steers)
  })
})

describe('setwright print', () => {
  it.each(['pattern', 'story-stick', 'cut-list', 'caliper-card', 'gauges', 'work-order', 'labels', 'quote'])(
    'writes %s to a PDF where the person stands',
    async (what) => {
      file('leg.json', benchLeg())
      const { code, out } = await cli(['print', what, 'leg.json'], here)
      expect([code, out]).toEqual([0, `leg-${what}.pdf\n`])
      expect(
        readFileSync(join(here, `leg-${what}.pdf`))
          .subarray(0, 5)
          .toString(),
      ).toBe('%PDF-')
    },
  )

  it('prints on a roll of the width said', async () => {
    file('leg.json', benchLeg())
    const roll = ['--paper', 'roll', '--width', '610 mm']
    expect((await cli(['print', 'story-stick', 'leg.json', ...roll], here)).code).toBe(0)
    // 610 mm are 1729.13 units of 1/72 in.
    expect(readFileSync(join(here, 'leg-story-stick.pdf'), 'latin1')).toContain('/MediaBox [0 0 1729.13')
    expect(await cli(['print', 'pattern', 'leg.json', '--paper', 'roll'], here)).toMatchObject({
      code: 2,
      err: expect.stringMatching(/^--width: is missing/),
    })
    expect(await cli(['print', 'quote', 'leg.json', ...roll], here)).toMatchObject({
      code: 2,
      err: expect.stringContaining('a roll takes pattern, story-stick, gauges'),
    })
  })

  it('writes where it is told, and says when it cannot', async () => {
    file('leg.json', benchLeg())
    expect((await cli(['print', 'labels', 'leg.json', '--out', 'x.pdf', '--paper', 'a4'], here)).code).toBe(0)
    expect(readFileSync(join(here, 'x.pdf')).length).toBeGreaterThan(500)
    expect(await cli(['print', 'labels', 'leg.json', '--out', 'no/x.pdf'], here)).toMatchObject({
      code: 2,
      err: expect.stringContaining('no/x.pdf: cannot be written'),
    })
    expect(await cli(['print', 'poster', 'leg.json'], here)).toMatchObject({
      code: 2,
      err: expect.stringMatching(/^WHAT: must be one of pattern, /),
    })
  })
})

describe('the command', () => {
  it.each([
    [[], /^verb: must be one of serve, plan, cut/],
    [['carve'], /read "carve"/],
    [['__proto__'], /^verb: /],
    [['plan'], /FILE\|-/],
    [['plan', 'a', 'b'], /read "a" "b"/],
    [['plan', 'a', '--loud'], /^--loud: is no flag of plan; allowed: --json, --shop FILE, --units in\|mm/],
    [['plan', 'a', '--units', 'ft'], /^--units: must be in or mm; read "ft"/],
    [['plan', 'a', '--shop'], /^--shop: needs a value/],
    [['plan', 'a', '--json=yes'], /^--json: takes no value/],
    [['backup', 'x', '--json'], /^--json: is no flag of backup/],
    [['print', 'labels', 'a', '--paper', 'napkin'], /^--paper: must be letter or a4 or roll/],
    [['print', 'labels', 'a', '--width', '36 in', '--length'], /^--length: needs a value/],
  ])('%j is refused with exit 2', async (args, says) => {
    const { code, out, err } = await cli(args, here)
    expect([code, out]).toEqual([2, ''])
    expect(err).toMatch(says)
  })

  it('tells how it is used when asked', async () => {
    const { code, out } = await cli(['--help'], here)
    expect(code).toBe(0)
    for (const verb of ['serve', 'plan', 'cut', 'match', 'print', 'backup', 'restore', 'export', 'import'])
      expect(out).toContain(`setwright ${verb}`)
    expect((await cli(['--version'], here)).out).toMatch(/^\d+\.\d+\.\d+\n$/)
  })
})
