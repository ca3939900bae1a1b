import { describe, expect, it } from 'vitest'
import { jobPath, jobsNamed, lumberPathFor, routeOf } from '../../web/router.ts'

describe('routeOf', () => {
  it('leads to the jobs from the front door', () => {
    expect(routeOf('/')).toEqual({ page: 'jobs' })
    expect(routeOf('/jobs')).toEqual({ page: 'jobs' })
  })

  it('leads to every page of a job, to its profile when none is named', () => {
    for (const page of ['profile', 'wood', 'work', 'rack', 'checks'] as const) {
      expect(routeOf(`/jobs/a-1/${page}`)).toEqual({ page, jobId: 'a-1' })
    }
    expect(routeOf('/jobs/a-1')).toEqual({ page: 'profile', jobId: 'a-1' })
  })

  it('tells a new job from a job', () => {
    expect(routeOf('/jobs/new')).toEqual({ page: 'new' })
  })

  it('says when there is nothing at an address', () => {
    for (const path of ['/nowhere', '/jobs/a/wood/b', '/jobs/a/paint', '/shop/x', '/jobs/%E0%A4%A'])
      expect(routeOf(path), path).toEqual({ page: 'missing' })
  })

  it('finds its way back from the address it makes', () => {
    expect(routeOf(jobPath('a/b c', 'rack'))).toEqual({ page: 'rack', jobId: 'a/b c' })
  })
})

describe('lumberPathFor', () => {
  it('leads to the yard list of its jobs, and only there', () => {
    const { pathname, search } = new URL(lumberPathFor(['a-1', 'b 2']), 'http://shop')
    expect(routeOf(pathname)).toEqual({ page: 'lumber' })
    expect(jobsNamed(search)).toEqual(['a-1', 'b 2'])
    expect(jobsNamed('')).toEqual([])
    expect(lumberPathFor(['a-1'], 'yard')).toBe('/lumber/yard?jobs=a-1')
    expect(lumberPathFor([])).toBe('/lumber')
  })
})
