import { describe, expect, it } from 'vitest'
import { benchLeg, dowel } from '../../jobs.ts'
import { phrasesOf } from '../prints/paper.ts'
import { newKey, withServer } from '../serving.ts'

const server = withServer()

async function keep(change: Record<string, unknown> = {}): Promise<string> {
  const { name, units, species, profile, joints } = benchLeg()
  const file = { name, units, species, profile, joints, ...change, key: newKey() }
  return (await server.post('/api/profiles', file).expect(201)).body.id
}

describe('GET /api/profiles/:id/prints', () => {
  it('answers the pattern of a single part as a PDF that names itself after the profile', async () => {
    const id = await keep({ name: 'Légs "of" Ål/4' })
    const answer = await server.get(`/api/profiles/${id}/prints/pattern.pdf`).expect(200)
    expect(answer.headers['content-type']).toBe('application/pdf')
    expect(answer.headers['content-disposition']).toBe('inline; filename="Legs-of-Al-4-pattern.pdf"')
    expect(answer.body.subarray(0, 5).toString()).toBe('%PDF-')
    expect(phrasesOf(answer.body)).toContain('From the library, version 1 · ')
    expect(phrasesOf(answer.body)).not.toMatch(/1 piece\b/)
  })

  it('goes by what it is where the name has no letter that every system takes', async () => {
    const id = await keep({ name: '旋盤' })
    const { headers } = await server.get(`/api/profiles/${id}/prints/pattern.pdf`).expect(200)
    expect(headers['content-disposition']).toBe('inline; filename="pattern.pdf"')
  })

  it('prints what a job of that profile prints, but for the number of pieces', async () => {
    const job = await server.enter({ ...benchLeg(), quantity: 1 })
    const of = async (path: string) =>
      (
        await server.get(`${path}/prints/pattern.svg`).expect(200).expect('content-type', /svg/)
      ).body.toString()
    expect(await of(`/api/profiles/${await keep()}`)).toBe(await of(`/api/jobs/${job.id}`))
  })

  it('takes paper and style from the query, and refuses others', async () => {
    const id = await keep()
    const { body: a4 } = await server
      .get(`/api/profiles/${id}/prints/pattern.pdf?paper=a4&style=mm`)
      .expect(200)
    // A4 is 210 × 297 mm (ISO 216), at 72 points to the inch.
    const [short, long] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/
      .exec(a4.toString('latin1'))!
      .slice(1)
      .map((points) => Number(points) * (25.4 / 72))
      .sort((a, b) => a - b)
    expect(short!).toBeCloseTo(210, 0)
    expect(long!).toBeCloseTo(297, 0)
    const { body } = await server.get(`/api/profiles/${id}/prints/pattern.pdf?paper=napkin`).expect(422)
    expect(body.errors[0].path).toBe('paper')
  })

  it.each(['pattern', 'story-stick'])('prints %s on a roll of a width in any form', async (what) => {
    const id = await keep()
    const address = `/api/profiles/${id}/prints/${what}.pdf`
    const { body } = await server.get(`${address}?paper=roll&width=24in`).expect(200)
    // The leg of 16-1/2 in lies across a roll of 24 in: 1,728 units of 1/72 in.
    expect(body.toString('latin1')).toContain('/MediaBox [0 0 1728 ')
    expect(phrasesOf(body)).toContain('16-1/2 in')
    const refused = await server.get(`${address}?paper=roll`).expect(422)
    expect(refused.body.errors[0].path).toBe('width')
  })

  it('needs no wood, and names none that was not named', async () => {
    const { name, units, profile } = dowel()
    const { body: kept } = await server.post('/api/profiles', { name, units, profile, key: newKey() })
    const { body } = await server.get(`/api/profiles/${kept.id}/prints/pattern.pdf`).expect(200)
    const text = phrasesOf(body)
    expect(text).toContain('Rail dowels')
    expect(text).not.toMatch(/maple/i)
  })

  it('says when it does not know the wood', async () => {
    const id = await keep({ species: 'ironbark of the moon' })
    const { body } = await server.get(`/api/profiles/${id}/prints/pattern.pdf`).expect(422)
    expect(body.errors[0].path).toBe('species')
  })

  it('is 404 for prints of a batch, and for other profiles', async () => {
    const id = await keep()
    for (const name of ['cut-list', 'work-order', 'labels', 'quote', 'poster'])
      await server.get(`/api/profiles/${id}/prints/${name}.pdf`).expect(404)
    for (const name of ['pattern.pdf', 'pattern.svg'])
      await server.get(`/api/profiles/none/prints/${name}`).expect(404)
  })
})
