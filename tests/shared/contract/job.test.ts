import { describe, expect, it } from 'vitest'
import { jobFileOf, readJobFile, readNewJob } from '../../../shared/contract/job.ts'
import { dowel } from '../../jobs.ts'

const key = '8c5e2f0a-6d1b-4c3e-9a77-0b1f2d3c4e5f'

describe('jobFileOf', () => {
  it('keeps everything entered but what only the server says', () => {
    const sent = {
      id: 'a',
      key,
      revision: 3,
      state: 'done',
      createdAt: 'x',
      updatedAt: 'y',
      name: 'Legs',
      mill: 7,
    }
    expect(jobFileOf(sent)).toEqual({ name: 'Legs', mill: 7 })
  })

  it.each([[null], [7], ['x'], [[]]])('refuses %j', (sent) => {
    expect(() => jobFileOf(sent)).toThrow(/must be an object/)
  })
})

describe('readNewJob', () => {
  it('gives the file as entered beside the job as read', () => {
    const { file, job, key: read } = readNewJob({ ...dowel(), key })
    expect(file).toEqual(dowel())
    expect(read).toBe(key)
    expect(job.profile.stations[1]).toMatchObject({ at: 400, diameter: 30, then: 'straight' })
  })

  it('takes any UUID in either case, the one for the other', () => {
    for (const uuid of ['11111111-1111-1111-1111-111111111111', key.toUpperCase()])
      expect(readNewJob({ ...dowel(), key: uuid }).key).toBe(uuid.toLowerCase())
  })

  it('needs a key that is a UUID', () => {
    expect(() => readNewJob(dowel())).toThrow(/^key: is missing/)
    expect(() => readNewJob({ ...dowel(), key: 'abc' })).toThrow(/^key: must be a UUID.*"abc"/)
    expect(readJobFile(dowel()).job.quantity).toBe(6)
  })
})
