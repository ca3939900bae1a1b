import { describe, expect, it } from 'vitest'
import { readJob } from '../../shared/job.ts'
import { isMeasuring, jobFileFrom, readLibraryProfile } from '../../shared/library.ts'
import { Problem } from '../../shared/problem.ts'
import { benchLeg, dowel } from '../jobs.ts'

const leg = () => {
  const { name, units, species, profile, joints } = benchLeg()
  return { id: 'leg', revision: 4, name, units: units as 'in', species, profile, joints }
}
const sheet = () => ({
  units: 'in',
  way: 'running',
  stations: [{ name: 'foot' }, { then: 'bead' }],
  originals: [
    {
      name: 'first',
      readings: [
        { at: '0', diameters: ['1 1/4'] },
        { at: '', diameters: [] },
      ],
    },
  ],
})

const refusal = (read: () => unknown): Problem => {
  try {
    read()
  } catch (problem) {
    if (problem instanceof Problem) return problem
    throw problem
  }
  throw new Error('was not refused')
}
const pathsOf = (read: () => unknown) => refusal(read).errors.map(({ path }) => path)

describe('readLibraryProfile', () => {
  it('reads a profile by the rules of a job of one part', () => {
    const { quantity, mount: _mount, match: _match, ...rest } = benchLeg()
    const { single } = readLibraryProfile(leg())
    expect(single).toMatchObject({ quantity: 1, species: 'walnut-black' })
    expect(single!.profile).toEqual(readJob(benchLeg()).profile)
    expect(single!.joints).toEqual(readJob({ ...rest, quantity }).joints)
  })

  it('needs no wood', () => {
    const { name, units, profile } = dowel()
    expect(readLibraryProfile({ name, units, profile }).single!.profile.stations[1]!.at).toBe(400)
  })

  it('reads the sheet it was made from, in the units of the sheet', () => {
    const { name, units, profile } = dowel()
    const read = readLibraryProfile({ name, units, profile, sheet: sheet() })
    // 1 1/4 in are 31.75 mm, for an inch is 25.4 mm (international yard and pound agreement, 1959).
    expect(read.sheet!.originals[0]!.readings[0]!.diameters).toEqual([31.75])
    expect(read.single).toBeDefined()
  })

  it('lets stations wait while there is a sheet', () => {
    for (const profile of [undefined, {}, { stations: [] }, { stations: [], split: true }]) {
      const read = readLibraryProfile({ name: 'Leg', units: 'mm', profile, sheet: sheet() })
      expect(read.single).toBeUndefined()
      expect(read.sheet!.stations).toHaveLength(2)
    }
  })

  it('names what is wrong while measuring too', () => {
    const read = (change: object) => () =>
      readLibraryProfile({ name: 'Leg', units: 'mm', sheet: sheet(), ...change })
    expect(pathsOf(read({ name: '' }))).toEqual(['name'])
    expect(pathsOf(read({ units: 'ell' }))).toEqual(['units'])
    expect(pathsOf(read({ sheet: 7 }))).toEqual(['sheet'])
    expect(pathsOf(read({ sheet: { ...sheet(), way: 'by eye' } }))).toEqual(['sheet.way'])
    const readings = [{ at: 'about there', diameters: [] }]
    expect(pathsOf(read({ sheet: { ...sheet(), originals: [{ readings }] } }))).toEqual([
      'sheet.originals[0].readings[0].at',
    ])
    expect(pathsOf(read({ joints: [{ kind: 'dowel', at: 1, size: 1, depth: 1 }] }))).toEqual([
      'joints[0].kind',
    ])
  })

  it('refuses what is no profile while measuring too, so that nothing sent is dropped', () => {
    const read = (profile: unknown) => () =>
      readLibraryProfile({ name: 'Leg', units: 'mm', sheet: sheet(), profile })
    for (const profile of [7, 'whole', null, []]) expect(pathsOf(read(profile))).toEqual(['profile'])
    expect(pathsOf(read({ stations: [], split: 'yes' }))).toEqual(['profile.split'])
  })

  it('names what is wrong with the sheet and with the rest at once', () => {
    const { units, profile } = dowel()
    expect(pathsOf(() => readLibraryProfile({ name: '', units, profile, sheet: 7 }))).toEqual([
      'sheet',
      'name',
    ])
    expect(
      pathsOf(() => readLibraryProfile({ name: '', units, sheet: { ...sheet(), way: 'by eye' } })),
    ).toEqual(['sheet.way', 'name'])
  })

  it('refuses a profile that is neither whole nor being measured', () => {
    expect(pathsOf(() => readLibraryProfile({ name: 'Leg', units: 'mm' }))).toEqual(['profile'])
    for (const list of [[], [{ at: 0, diameter: 20 }]]) {
      const profile = { stations: list }
      expect(pathsOf(() => readLibraryProfile({ name: 'Leg', units: 'mm', profile }))).toEqual([
        'profile.stations',
      ])
    }
    const started = { stations: [{ at: 0, diameter: 20 }] }
    expect(
      pathsOf(() => readLibraryProfile({ name: 'Leg', units: 'mm', profile: started, sheet: sheet() })),
    ).toEqual(['profile.stations'])
  })
})

describe('jobFileFrom', () => {
  it('gives a job file all that the profile says, as it was entered, and where it came from', () => {
    const { id: _id, revision: _revision, ...said } = leg()
    expect(jobFileFrom({ ...leg(), sheet: sheet() })).toEqual({
      ...said,
      from: { profile: 'leg', revision: 4 },
    })
    const { unread, profile, from } = readJob({ ...jobFileFrom(leg()), quantity: 8 })
    expect([unread, from]).toEqual([[], { profile: 'leg', revision: 4 }])
    expect(profile).toEqual(readJob(benchLeg()).profile)
  })

  it('leaves out what the profile does not say', () => {
    const { name, profile } = dowel()
    const file = jobFileFrom({ id: 'd', revision: 1, name, units: 'mm', profile })
    expect(Object.keys(file).sort()).toEqual(['from', 'name', 'profile', 'units'])
  })

  it('makes no job of a profile that is still being measured, and says so', () => {
    const started = { ...leg(), profile: { stations: [] }, sheet: sheet() }
    expect(isMeasuring(started)).toBe(true)
    const { code, message } = refusal(() => jobFileFrom(started))
    expect(code).toBe('wrong-state')
    expect(message).toBe(
      '"Reading bench legs" is still being measured and has no stations yet: finish its sheet first.',
    )
  })
})
