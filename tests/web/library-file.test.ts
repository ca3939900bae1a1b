import { describe, expect, it } from 'vitest'
import type { LibraryProfile } from '../../shared/library.ts'
import {
  drawnProfile,
  jobOfProfile,
  libraryFileOf,
  libraryFileOfJob,
  sentLibraryFile,
} from '../../web/library-file.ts'
import { liveProfile } from '../../web/live-plan.ts'

const finial: LibraryProfile = {
  id: 'finial',
  revision: 3,
  name: 'Finial',
  units: 'mm',
  species: 'walnut-black',
  notes: 'Fits a 10 mm hole',
  profile: {
    stations: [
      { at: '0', diameter: '20' },
      { at: '50', diameter: '35', then: 'straight' },
      { at: '8 cm', diameter: '6' },
    ],
  },
  joints: [{ kind: 'hole', at: '40', size: '4', depth: '10', angle: 45 }],
  createdAt: '2026-01-02T03:04:05Z',
  updatedAt: '2026-01-02T03:04:05Z',
}
const measuring: LibraryProfile = {
  ...finial,
  id: 'spindle',
  profile: { stations: [] },
  sheet: { units: 'mm', way: 'running', choice: 'larger', stations: [], originals: [] },
}

describe('a profile of the library', () => {
  it('is sent without what the server adds to it', () => {
    expect(Object.keys(libraryFileOf(finial)).sort()).toEqual([
      'joints',
      'name',
      'notes',
      'profile',
      'species',
      'units',
    ])
  })

  it('is drawn in mm, the same one each time', () => {
    expect(drawnProfile(finial)?.stations.map(({ at }) => at)).toEqual([0, 50, 80])
    expect(drawnProfile(finial)).toBe(drawnProfile(finial))
  })

  it('is not drawn while it is still being measured', () => {
    expect(drawnProfile(measuring)).toBeUndefined()
  })

  it('sends the angle of a joint as a number', () => {
    const file = libraryFileOf(finial)
    const [joint] = sentLibraryFile({ ...file, joints: [{ ...file.joints![0]!, angle: '22,5' }] }).joints!
    expect(joint!.angle).toBe(22.5)
  })

  it('gives a new job all it says, and where it came from', () => {
    expect(jobOfProfile(finial)).toMatchObject({
      name: 'Finial',
      units: 'mm',
      species: 'walnut-black',
      profile: finial.profile,
      joints: finial.joints,
      from: { profile: 'finial', revision: 3 },
    })
  })

  it('takes of a job only what belongs to its shape and wood', () => {
    const kept = libraryFileOfJob(
      { ...jobOfProfile(finial), customer: 'A customer', notes: 'Due soon' },
      'Kept',
    )
    expect(kept).toEqual({
      name: 'Kept',
      units: 'mm',
      species: 'walnut-black',
      profile: finial.profile,
      joints: finial.joints,
    })
  })
})

describe('liveProfile', () => {
  it('is drawn without a name, which is told as missing', () => {
    const { job, errors } = liveProfile({ ...libraryFileOf(finial), name: ' ' })
    expect(job?.profile.stations.at(-1)?.at).toBe(80)
    expect(errors.map(({ path }) => path)).toEqual(['name'])
  })

  it('names the field of a station that cannot be read', () => {
    const file = libraryFileOf(finial)
    const stations = [{ ...file.profile.stations[0]!, diameter: 'thick' }, ...file.profile.stations.slice(1)]
    const { errors } = liveProfile({ ...file, profile: { stations } })
    expect(errors.map(({ path }) => path)).toEqual(['profile.stations[0].diameter'])
  })

  it('asks for no stations while they are still being measured', () => {
    expect(liveProfile(libraryFileOf(measuring)).errors).toEqual([])
    expect(liveProfile({ ...libraryFileOf(measuring), name: '' }).errors.map(({ path }) => path)).toEqual([
      'name',
    ])
  })
})
