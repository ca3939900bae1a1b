import { describe, expect, it } from 'vitest'
import { readJob } from '../../shared/job.ts'
import { Problem } from '../../shared/problem.ts'
import { nm } from '../../shared/units/length.ts'
import { badJobs } from '../bad-jobs.ts'
import { benchLeg, dowel, fortyStations, knob } from '../jobs.ts'

const refusalOf = (file: unknown): Problem => {
  try {
    readJob(file)
  } catch (error) {
    if (error instanceof Problem) return error
    throw error
  }
  throw new Error('it was read')
}

describe('readJob', () => {
  it('reads every length to mm, whatever it is written in', () => {
    const job = readJob(benchLeg())
    expect(job.profile.stations.map((s) => nm(s.at) / 1e6)).toEqual([0, 31.75, 44.45, 304.8, 419.1])
    expect(job.profile.stations[3]!.side).toBeCloseTo(57.15, 9)
    expect(job.joints[0]!.size.map((s) => Math.round(s * 1e6))).toEqual([9_525_000, 63_500_000])
  })

  it('fills in what is left out', () => {
    const job = readJob(dowel())
    expect(job).toMatchObject({
      moisture: 8,
      serviceMoisture: 8,
      match: true,
      mount: 'spur',
      perBlank: 1,
      grain: 'any',
    })
    expect(job.tolerance.diameter).toBeCloseTo(25.4 / 32, 9)
    // Common practice, no source: a tenon is held to 1/64 in.
    expect(job.tolerance.tenon).toBe(0.396875)
    expect(job.instrument.jawWidth).toBeCloseTo(25.4 / 8, 9)
    expect(job.profile.stations.every((s) => s.then === 'straight')).toBe(true)
  })

  it('reads a bare number as mm even in an inch job, and bare text as the job’s unit', () => {
    const file = benchLeg()
    file.profile.stations[0]!.diameter = 25.4
    expect(readJob(file).profile.stations[0]!.diameter).toBe(25.4)
  })

  it('takes a length as an allowance, in the job’s unit', () => {
    const job = readJob({ ...benchLeg(), allowances: { endWaste: '1', planing: '1/8', bow: '1/16' } })
    expect(job.allowances.endWaste).toBeCloseTo(25.4, 9)
    expect(job.allowances.planingThin).toBeCloseTo(3.175, 9)
    expect(job.allowances.bowPerMm! * 304.8).toBeCloseTo(25.4 / 16, 9)
  })

  it('reads what is said of a stair in the job’s own units, and what it does not know there it names', () => {
    const job = readJob({
      ...benchLeg(),
      use: 'stair',
      stair: { run: '12 ft', gap: '4', load: '60', between: ['1', '16'], tread: '10' },
    })
    expect(nm(job.stair!.run!)).toBe(nm(3657.6))
    expect(nm(job.stair!.gap!)).toBe(nm(101.6))
    // 60 lbf, NIST SP 811
    expect(job.stair!.load).toBeCloseTo(266.893296916, 9)
    expect(job.stair!.between!.map(nm)).toEqual([nm(25.4), nm(406.4)])
    expect(job.unread).toEqual(['stair.tread'])
    expect(readJob({ ...dowel(), stair: { load: '60' } }).stair).toEqual({ load: 60 })
  })

  it('has no stair, no hands and no lot unless they are named', () => {
    const job = readJob(dowel())
    expect([job.stair, job.mirrored, job.lot]).toEqual([undefined, undefined, undefined])
    const named = readJob({ ...dowel(), mirrored: true, lot: ' Autumn walnut ' })
    expect([named.mirrored, named.lot]).toEqual([true, 'Autumn walnut'])
  })

  it('takes the face of a joint as a letter or as an angle', () => {
    const joint = { kind: 'hole', at: '14', size: '1/2', depth: '1' }
    const job = readJob({
      ...benchLeg(),
      joints: [
        { ...joint, face: 'B' },
        { ...joint, face: 45 },
        { ...joint, angle: 30 },
      ],
    })
    expect(job.joints.map(({ face, angle }) => [face, angle])).toEqual([
      ['B', undefined],
      [undefined, 45],
      [undefined, 30],
    ]) // prettier-ignore
    expect(job.unread).toEqual([])
  })

  it.each([benchLeg, dowel, knob, fortyStations])('reads the %o', (file) => {
    expect(readJob(file()).name).toBe(file().name)
  })

  it.each(badJobs)('refuses $what', ({ file, path, says }) => {
    const refusal = refusalOf(file)
    expect(refusal.status).toBe(422)
    const named = refusal.errors.find((e) => path.test(e.path))
    expect(named, JSON.stringify(refusal.errors.slice(0, 4))).toBeDefined()
    if (says)
      expect(
        refusal.errors
          .filter((e) => path.test(e.path))
          .map((e) => e.message)
          .join(' '),
      ).toMatch(says)
    expect(refusal.message).not.toMatch(/undefined|\[object|at .*\.ts/)
  })

  it('says what was read and what is allowed', () => {
    const [first] = refusalOf({ ...benchLeg(), quantity: -4 }).errors
    expect(first).toEqual({ path: 'quantity', message: 'must be at least 1; read -4' })
  })

  it('takes a turned end that a tenon joint names for a tenon, unless its station says otherwise', () => {
    const file = (more: object = {}, at: unknown = '0') => ({
      name: 'Rungs',
      units: 'in',
      species: 'maple-sugar',
      quantity: 4,
      profile: {
        stations: [
          { at: '0', diameter: '3/4', ...more },
          { at: '1', diameter: '3/4' },
          { at: '1', diameter: '1 1/4' },
          { at: '12', diameter: '1 1/4' },
        ],
      },
      joints: [{ kind: 'tenon', at, size: '3/4', depth: '1' }],
    })
    const tenons = (job: unknown) => readJob(job).profile.stations.map((station) => station.tenon)
    for (const at of ['0', '1/2', '1'])
      expect(tenons(file({}, at))).toEqual([true, undefined, undefined, undefined])
    expect(tenons(file({ tenon: false }))[0]).toBe(false)
    expect(tenons({ ...file(), joints: [] })[0]).toBeUndefined()
  })
})
