import { describe, expect, it } from 'vitest'
import { benchLeg, dowel } from '../../jobs.ts'
import { phrasesOf } from '../prints/paper.ts'
import { withServer } from '../serving.ts'

const server = withServer()
const names = [
  'pattern',
  'story-stick',
  'cut-list',
  'caliper-card',
  'gauges',
  'work-order',
  'labels',
  'quote',
]

describe('GET /api/jobs/:id/prints', () => {
  it.each(names)('answers %s.pdf as a PDF that names itself after the job', async (name) => {
    const { id } = await server.enter({ ...benchLeg(), name: 'Légs "of" Ål/4' })
    const answer = await server.get(`/api/jobs/${id}/prints/${name}.pdf`).expect(200)
    expect(answer.headers['content-type']).toBe('application/pdf')
    expect(answer.headers['content-disposition']).toBe(`inline; filename="Legs-of-Al-4-${name}.pdf"`)
    expect(answer.body.subarray(0, 5).toString()).toBe('%PDF-')
  })

  it('takes paper and style from the query, and refuses others', async () => {
    const { id } = await server.enter(dowel())
    const sizeOf = async (query: string) => {
      const { body } = await server.get(`/api/jobs/${id}/prints/caliper-card.pdf${query}`).expect(200)
      return /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/
        .exec(body.toString('latin1'))
        ?.slice(1)
        .map(Number)
        .sort((a, b) => a - b)
    }
    // Letter is 8-1/2 × 11 in at 72 points; A4 is 210 × 297 mm (ISO 216).
    expect(await sizeOf('?paper=letter')).toEqual([612, 792])
    const [width, height] = (await sizeOf('?paper=a4&style=mm'))!
    expect(width! * (25.4 / 72)).toBeCloseTo(210, 0)
    expect(height! * (25.4 / 72)).toBeCloseTo(297, 0)
    const { body } = await server.get(`/api/jobs/${id}/prints/pattern.pdf?paper=napkin`).expect(422)
    expect(body.errors[0].path).toBe('paper')
  })

  it('prints pattern, story stick and gauges on a roll of a width in any form, and nothing else', async () => {
    const { id } = await server.enter(dowel())
    const address = `/api/jobs/${id}/prints`
    for (const what of ['pattern', 'story-stick']) {
      const { body } = await server.get(`${address}/${what}.pdf?paper=roll&width=24in`).expect(200)
      // The dowel of 400 mm lies across a roll of 24 in: 1,728 units of 1/72 in.
      expect(body.toString('latin1')).toContain('/MediaBox [0 0 1728 ')
    }
    const pathOf = async (query: string) =>
      (await server.get(`${address}/${query}`).expect(422)).body.errors[0].path
    expect(await pathOf('pattern.pdf?paper=roll')).toBe('width')
    expect(await pathOf('pattern.pdf?paper=roll&width=broad')).toBe('width')
    expect(await pathOf('pattern.pdf?width=24in')).toBe('width')
    expect(await pathOf('labels.pdf?paper=roll&width=24in')).toBe('paper')
  })

  it('draws the pattern', async () => {
    const { id } = await server.enter(dowel())
    const { body } = await server
      .get(`/api/jobs/${id}/prints/pattern.svg`)
      .expect(200)
      .expect('content-type', /image\/svg\+xml/)
    expect(body.toString()).toContain('<svg')
  })

  it('draws it with lengths in the style asked for, and refuses others', async () => {
    const { id } = await server.enter(dowel())
    const address = `/api/jobs/${id}/prints/pattern.svg`
    const { body } = await server.get(`${address}?style=decimal`).expect(200)
    // 400 mm are 15.748 in.
    expect(body.toString()).toContain('15.748 in')
    await server.get(`${address}?style=cubits`).expect(422)
  })

  it('draws a started batch as it was planned, under the name it has now', async () => {
    const { id } = await server.start(dowel())
    const renamed = { ...dowel(), name: 'Porch dowels' }
    await server.ask().put(`/api/jobs/${id}`).set('if-match', '"2"').send(renamed).expect(200)
    const { body } = await server.get(`/api/jobs/${id}/prints/pattern.svg`).expect(200)
    expect(body.toString()).toContain('<title>Porch dowels')
  })

  it('prints the labels of a started batch', async () => {
    const { id } = await server.start(dowel())
    await server.get(`/api/jobs/${id}/prints/labels.pdf`).expect(200)
  })

  it('prints a started batch under the name it has now', async () => {
    const { id } = await server.start(dowel())
    const renamed = { ...dowel(), name: 'Porch dowels' }
    await server.ask().put(`/api/jobs/${id}`).set('if-match', '"2"').send(renamed).expect(200)
    const { body } = await server.get(`/api/jobs/${id}/prints/work-order.pdf`).expect(200)
    expect(phrasesOf(body)).toContain('Porch dowels')
  })

  it('is 404 for other names and other jobs', async () => {
    const { id } = await server.enter(dowel())
    await server.get(`/api/jobs/${id}/prints/poster.pdf`).expect(404)
    await server.get('/api/jobs/none/prints/pattern.pdf').expect(404)
    await server.get('/api/jobs/none/prints/pattern.svg').expect(404)
  })
})
