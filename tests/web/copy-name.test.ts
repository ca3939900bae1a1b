import { describe, expect, it } from 'vitest'
import { readJob } from '../../shared/job.ts'
import { copyName } from '../../web/copy-name.ts'
import { dowel } from '../jobs.ts'

describe('the name of a copy', () => {
  it('says that it is one', () => {
    expect(copyName('Bench leg')).toBe('Bench leg (copy)')
  })

  it('is never too long to be stored', () => {
    const name = copyName('Leg of a bench '.repeat(8))
    expect(readJob({ ...dowel(), name }).name).toBe(name)
    expect(name).toMatch(/^(Leg of a bench )+.*\(copy\)$/)
  })
})
