import { describe, expect, it } from 'vitest'
import { demo } from '../../seed/demo.ts'
import { seedDemo } from '../../server/demo.ts'
import { readLibraryProfile } from '../../shared/library.ts'
import { profileOfSheet } from '../../shared/profile/measured/profile-of-sheet.ts'
import { readSheet } from '../../shared/profile/measured/sheet-schema.ts'
import { nm } from '../../shared/units/length.ts'
import { dowel } from '../jobs.ts'
import { newKey, withServer } from './serving.ts'

const server = withServer()
const empty = withServer()
const bare = withServer()

const jobsOf = async (of = server) => (await of.get('/api/jobs').expect(200)).body as Record<string, any>[]
const named = async (name: RegExp) => (await jobsOf()).find((job) => name.test(job.name))!

describe('the demo', () => {
  it('fills an empty database once, with a shop, boards and a job in each state', async () => {
    expect(await seedDemo(server.context())).toBe(true)
    expect(await seedDemo(server.context())).toBe(false)
    expect(new Set((await jobsOf()).map(({ state }) => state))).toEqual(new Set(['done', 'draft', 'started']))
    expect(await jobsOf()).toHaveLength(4)
    expect((await server.get('/api/shop')).body.name).toBe('Hollow Elm Turnery')
    expect((await server.get('/api/boards')).body.length).toBeGreaterThan(0)
  })

  it('has one edge due on the rack, the others brought back after the last step', async () => {
    const { id } = (await jobsOf()).find(({ state }) => state === 'started')!
    const { body: plan } = await server.get(`/api/jobs/${id}/plan`)
    const { body: touchUps } = await server.get(`/api/jobs/${id}/touch-ups`)
    const { body: steps } = await server.get(`/api/jobs/${id}/steps`)
    expect(touchUps).toHaveLength(plan.grinding.length - 1)
    for (const { at } of touchUps) {
      expect(at > steps.at(-1).at).toBe(true)
      expect(at <= new Date().toISOString()).toBe(true)
    }
  })

  it('leaves a database alone in which there is a job', async () => {
    await empty.enter({ ...demo('2026-01-01T00:00:00.000Z').jobs[2]!.file })
    expect(await seedDemo(empty.context())).toBe(false)
    expect(await jobsOf(empty)).toHaveLength(1)
  })

  it('leaves a database alone in which there is a profile', async () => {
    const { name, units, profile } = dowel()
    await bare.post('/api/profiles', { name, units, profile, key: newKey() }).expect(201)
    expect(await seedDemo(bare.context())).toBe(false)
    expect(await jobsOf(bare)).toEqual([])
  })

  it('is the same every time, with times from the moment given', () => {
    const now = '2026-03-04T05:06:07.000Z'
    expect(demo(now)).toEqual(demo(now))
    const times = JSON.stringify(demo(now)).match(/\d{4}-\d\d-\d\dT[\d:.]+Z/g)!
    expect(times.every((time) => time <= now)).toBe(true)
  })

  it('has legs left square at the top with mortises and a horn', async () => {
    const legs = await named(/legs/)
    const { body: plan } = await server.get(`/api/jobs/${legs.id}/plan`)
    expect(plan.part.maxSide).toBeCloseTo(50.8, 9)
    expect(plan.operations.filter((o: { kind: string }) => o.kind === 'mortise').length).toBeGreaterThan(0)
    // The horn of 3/4 in stands over a joint within 2 in of the end, or an end marked to be trimmed later.
    expect(plan.blank.lengthParts.top).toBeCloseTo(0.75 * 25.4, 9)
    expect(plan.checkStations.filter((s: { caution?: string }) => s.caution)).toEqual([])
    expect(plan.blank.lathes.some((lathe: { fits: boolean }) => lathe.fits)).toBe(true)
    expect(plan.quote.total).toBeGreaterThan(0)
  })

  it('has legs cut from boards on hand alone, their wood in the price', async () => {
    const { body: legs } = await server.get(`/api/jobs/${(await named(/legs/)).id}/plan`)
    expect(legs.cut.boards.map((board: { onHand?: boolean }) => board.onHand)).not.toContain(undefined)
    expect(legs.boardFeet.bought).toBe(0)
    expect(legs.quote.lines.find(({ key }: { key: string }) => key === 'wood').amount).toBeGreaterThan(0)
  })

  it('has arm posts for which a board on hand is not enough, so that the yard is asked', async () => {
    const { id } = await named(/arm posts/)
    const { body: posts } = await server.get(`/api/jobs/${id}/plan`)
    const onHand = posts.cut.boards.map((board: { onHand?: boolean }) => board.onHand ?? false)
    expect(new Set(onHand)).toEqual(new Set([true, false]))
    expect(posts.boardFeet.bought).toBeGreaterThan(0)
    const { body: lumber } = await server.get(`/api/lumber?jobs=${id}`)
    expect(lumber.asks.length).toBeGreaterThan(0)
    expect(JSON.stringify(lumber.messages)).toContain('ash')
    expect(lumber.boardFeet).toBeGreaterThan(0)
  })

  it('has a yard that asks another price for every wood the shop turns', async () => {
    const { yards } = (await server.get('/api/shop')).body
    const woods = new Set((await jobsOf()).map(({ species }) => species))
    expect(woods.size).toBeGreaterThan(2)
    for (const grade of ['FAS', '1C']) {
      const prices = [...woods].map(
        (species) =>
          yards[0].prices.find(
            (row: Record<string, unknown>) =>
              row.species === species && row.nominal === '8/4' && row.grade === grade,
          ).pricePerBoardFoot,
      )
      expect(new Set(prices).size).toBe(woods.size)
    }
  })

  it('has offcuts of what is sawn on the rack, with where they come from', async () => {
    const { body: rack } = await server.get('/api/boards')
    const offcuts = rack.filter(({ key }: { key: string }) => /^O-\d+$/.test(key))
    expect(offcuts.length).toBeGreaterThan(0)
    for (const offcut of offcuts) {
      expect(offcut.from).toMatch(/^offcut of a bought board, (Gallery balusters|Apothecary drawer knobs)$/)
      expect(offcut.reserved).toBeUndefined()
    }
    const { body: wood } = await server.get(`/api/jobs/${(await named(/balusters/)).id}/sawn`)
    expect(wood.sawn.offcuts.length).toBeGreaterThan(0)
  })

  it('has a long run of slender balusters under way: one over, one under, one spoiled', async () => {
    const { id, quantity } = await named(/balusters/)
    expect(quantity).toBe(36)
    const { body: plan } = await server.get(`/api/jobs/${id}/plan`)
    expect(plan.part.whip.rest).not.toBe('none')
    // n parts of 11/16 in leave n + 1 gaps, each smaller than the ball of 4 3/8 in: 35 fill less than
    // 35 × 11/16 + 36 × 4 3/8 = 181.56 in of the 184 in, 36 up to 186.63 in.
    expect(plan.stair.run.count).toBe(36)
    const { body: pieces } = await server.get(`/api/jobs/${id}/pieces`)
    const finished = pieces.filter((p: { progress: number }) => p.progress === 1)
    expect(finished.length).toBeGreaterThan(5)
    expect(pieces.some((p: { progress: number }) => p.progress > 0 && p.progress < 1)).toBe(true)
    expect(pieces.filter((p: { spoiled?: object }) => p.spoiled)).toHaveLength(1)
    const { body: checks } = await server.get(`/api/jobs/${id}/checks`)
    const count = (verdict: string) => checks.filter((c: { verdict: string }) => c.verdict === verdict).length
    expect([count('over'), count('under')]).toEqual([1, 1])
    expect(count('in')).toBeGreaterThan(40)
    await server.get(`/api/jobs/${id}/match`).expect(200)
  })

  it('has round knobs in metric, several turned from a stick, done', async () => {
    const knobs = await named(/knobs/)
    expect(knobs).toMatchObject({ units: 'mm', state: 'done' })
    const { body: plan } = await server.get(`/api/jobs/${knobs.id}/plan`)
    expect(plan.blank.stock.perBlank).toBeGreaterThan(1)
    const { body: match } = await server.get(`/api/jobs/${knobs.id}/match`)
    expect(match.stations.find((s: { key: string }) => s.key === 'rim').n).toBe(24)
  })

  it('has posts in left and right hands, with a joint on two faces', async () => {
    const posts = await named(/posts/)
    expect(posts).toMatchObject({ mirrored: true, state: 'draft' })
    expect(posts.quantity % 2).toBe(0)
    const { body: plan } = await server.get(`/api/jobs/${posts.id}/plan`).expect(200)
    expect(new Set(plan.job.joints.map(({ face }: { face: string }) => face))).toEqual(new Set(['A', 'B']))
    expect(plan.blank.lathes.some((lathe: { fits: boolean }) => lathe.fits)).toBe(true)
  })

  it('reads every field of its jobs', async () => {
    for (const { id } of await jobsOf()) {
      const { body: plan } = await server.get(`/api/jobs/${id}/plan`).expect(200)
      expect(plan.job.unread, plan.job.name).toEqual([])
    }
  })
})

describe('the library of the demo', () => {
  const profiles = async () => (await server.get('/api/profiles').expect(200)).body as Record<string, any>[]
  const profile = async (name: RegExp) => (await profiles()).find((kept) => name.test(kept.name))!

  it('has profiles in inches and in mm, all but one whole, and prints of those', async () => {
    const all = await profiles()
    expect(all).toHaveLength(6)
    expect(new Set(all.map(({ units }) => units))).toEqual(new Set(['in', 'mm']))
    const whole = all.filter(({ profile: { stations } }) => stations.length > 0)
    expect(whole).toHaveLength(5)
    for (const { id } of whole) await server.get(`/api/profiles/${id}/prints/pattern.svg`).expect(200)
    expect(all.some(({ profile: { split } }) => split === true)).toBe(true)
  })

  it('has a baluster in three versions, the last of which the job was made from', async () => {
    const baluster = await profile(/baluster/)
    expect(baluster.revision).toBe(3)
    const { body: versions } = await server.get(`/api/profiles/${baluster.id}/versions`).expect(200)
    expect(versions).toHaveLength(3)
    expect(new Set(versions.map((version: object) => JSON.stringify(version))).size).toBe(3)
    const job = await named(/balusters/)
    expect(job.from).toEqual({ profile: baluster.id, revision: 3 })
    expect(job.profile).toEqual(baluster.profile)
  })

  it('has a leg that is what its sheet of two originals tells, one worn and read from its shoulder', async () => {
    const leg = await profile(/leg/)
    const { single, sheet } = readLibraryProfile(leg)
    expect(sheet!.originals).toHaveLength(2)
    expect(sheet!.originals[1]).toMatchObject({ datum: { name: 'shoulder', towards: 'foot' } })
    expect(sheet!.originals[1]!.wear).toBeGreaterThan(0)
    const { stations, missing, notes } = profileOfSheet(sheet!)
    expect(missing).toEqual([])
    expect(notes.filter((note) => /foot|order/.test(note) && /differ|apart/.test(note))).toEqual([])
    const sizes = (list: typeof stations) =>
      list.map(({ at, diameter, rise, depth, then }) => [
        then,
        ...[at, diameter, rise, depth].map((mm) => mm && nm(mm)),
      ])
    expect(sizes(stations)).toEqual(sizes(single!.profile.stations))
  })

  it('has a spindle left half measured', async () => {
    const spindle = await profile(/spindle/)
    expect(spindle.profile.stations).toEqual([])
    const missing = profileOfSheet(readSheet(spindle.sheet)).missing
    expect(missing.length).toBeGreaterThan(0)
    await server.get(`/api/profiles/${spindle.id}/prints/pattern.pdf`).expect(409)
  })
})
