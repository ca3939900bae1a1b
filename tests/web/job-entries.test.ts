import { describe, expect, it } from 'vitest'
import { readJob } from '../../shared/job.ts'
import { inUnits, isUnbegun, jobFileOf, newJobFile, sentFile } from '../../web/job-entries.ts'
import type { JobFile } from '../../web/job-file.ts'

const legs: JobFile = {
  name: 'Legs',
  units: 'in',
  species: 'walnut-black',
  quantity: '8',
  moisture: '6,5',
  profile: {
    stations: [
      { at: '0', diameter: '1 in', then: 'straight', plus: '1/64' },
      { at: '1 1/4', diameter: '1 1/4', then: 'bead', rise: '1/4' },
      { at: '2', diameter: 31.75, then: 'square', side: '2 1/4' },
      { at: '16 1/2' },
    ],
  },
  tolerance: { diameter: '1/32' },
  joints: [{ kind: 'mortise', at: '14 1/2', angle: '90', size: ['3/8', '2 1/2'], depth: '1' }],
  allowances: { endWaste: '3/4', practice: '2' },
  instrument: { jawWidth: '1/8' },
}

describe('inUnits', () => {
  it('keeps what every length means when a job is written in other units', () => {
    const read = (file: JobFile) => {
      const { units: _units, ...job } = readJob(sentFile(file))
      return job
    }
    expect(read(inUnits(legs, 'mm'))).toEqual(read(legs))
  })

  it('keeps what is said of a stair: lengths, and a load in pounds or newtons', () => {
    const stair = { run: '100', gap: '4 3/8', load: '50', between: ['3', '13'] }
    const balusters: JobFile = { ...legs, use: 'stair', stair }
    const inMm = inUnits(balusters, 'mm')
    expect(inMm.stair).toEqual({ run: '100 in', gap: '4 3/8 in', load: '50 lb', between: ['3 in', '13 in'] })
    expect(readJob(sentFile(inMm)).stair).toEqual(readJob(sentFile(balusters)).stair)
    const metric: JobFile = { ...inMm, stair: { run: '2400', load: '220' } }
    expect(inUnits(metric, 'in').stair).toEqual({ run: '2400 mm', load: '220 N' })
  })

  it('leaves loads and lengths of a stair that carry their unit', () => {
    const stair = { run: '8 ft', load: '0.2 kN' }
    expect(inUnits({ ...legs, use: 'guard', stair }, 'mm').stair).toEqual(stair)
  })

  it('leaves lengths that carry their unit, and bare mm, as they were entered', () => {
    const { stations } = inUnits(legs, 'mm').profile
    expect(stations[0]!.diameter).toBe('1 in')
    expect(stations[2]!.diameter).toBe(31.75)
    expect(stations[1]!.at).toBe('1 1/4 in')
  })
})

describe('isUnbegun', () => {
  it('holds while every length of a job is that of the plain stick it starts as', () => {
    const job = newJobFile('in')
    expect(isUnbegun(job)).toBe(true)
    expect(isUnbegun({ ...job, joints: [] })).toBe(true)
    expect(isUnbegun(inUnits(job, 'mm'))).toBe(false)
    expect(isUnbegun({ ...job, profile: legs.profile })).toBe(false)
    expect(isUnbegun({ ...job, joints: legs.joints! })).toBe(false)
    expect(isUnbegun({ ...job, allowances: legs.allowances! })).toBe(false)
  })
})

describe('sentFile', () => {
  it('makes numbers of counts, percentages and angles as typed, and leaves lengths as entered', () => {
    const sent = sentFile(legs)
    expect(sent).toMatchObject({ quantity: 8, moisture: 6.5, allowances: { practice: 2, endWaste: '3/4' } })
    expect(sent.joints![0]).toMatchObject({ angle: 90, at: '14 1/2' })
  })

  it('leaves what is no number for the reader to refuse by its field', () => {
    expect(sentFile({ ...legs, quantity: 'a dozen' }).quantity).toBe('a dozen')
    expect(() => readJob(sentFile({ ...legs, quantity: 'a dozen' }))).toThrow(/quantity.*a number.*a dozen/)
  })

  it('makes a number of the moisture when sawn, and leaves the other wishes for the lumber', () => {
    const sent = sentFile({ ...legs, lumber: { sap: 'allowed', moisture: '14,5' } })
    expect(sent.lumber).toEqual({ sap: 'allowed', moisture: 14.5 })
    expect(sentFile({ ...legs, lumber: { oneBoard: true, moisture: ' ' } }).lumber).toEqual({
      oneBoard: true,
    })
    expect(() => readJob(sentFile({ ...legs, lumber: { moisture: 'damp' } }))).toThrow(
      /lumber.moisture.*damp/,
    )
  })

  it('lets the number of parts in a stick be left to the program', () => {
    expect(sentFile({ ...legs, perBlank: 'auto' }).perBlank).toBe('auto')
    expect(sentFile({ ...legs, perBlank: '3' }).perBlank).toBe(3)
  })
})

describe('a new job', () => {
  it.each(['in', 'mm'] as const)('lacks nothing but its name in %s', (units) => {
    const file = sentFile(newJobFile(units))
    expect(() => readJob(file)).toThrow(/^name/)
    expect(readJob({ ...file, name: 'Sticks' }).units).toBe(units)
  })

  it('is written without what the server keeps beside it', () => {
    const stored = { ...legs, id: 'x', revision: 3, state: 'draft', createdAt: '', updatedAt: '' }
    expect(jobFileOf(stored)).toEqual(legs)
  })
})
