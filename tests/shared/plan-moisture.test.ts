import { describe, expect, it } from 'vitest'
import { roughThickness, surfacedThickness } from '../../shared/blank/nominal.ts'
import { readJob } from '../../shared/job.ts'
import { planJob } from '../../shared/plan.ts'
import { defaultShop, type Shop } from '../../shared/shop.ts'
import { inches, nm } from '../../shared/units/length.ts'
import { benchLeg, dowel, knob } from '../jobs.ts'
import { woods } from './wood/woods.ts'

const shop: Shop = {
  ...defaultShop,
  stock: [
    ...defaultShop.stock,
    { species: '*', nominal: '12/4' },
    { species: '*', nominal: '6/4', surfaced: true },
  ],
}

describe('a plan for wood that has still to dry', () => {
  const jobs = [
    benchLeg(),
    dowel(),
    knob(),
    { ...dowel(), quantity: 5, profile: { ...dowel().profile, split: true } },
  ]
  const species = woods.filter((_, i) => i % 23 === 0).map(({ key }) => key)

  it.each(species)('never asks less than for dry wood, and gets it out of its boards: %s', (key) => {
    for (const job of jobs)
      for (const [sawn, turned] of [
        [8, 8],
        [14, 12],
        [20, 8],
        [45, 25],
        [90, 8],
      ] as const) {
        const [wet, dry] = [
          { ...job, species: key, moisture: turned, lumber: { moisture: sawn } },
          { ...job, species: key },
        ].map((file) => planJob(readJob(file), shop, woods).blank)
        const told = `${job.name}, ${sawn} % and ${turned} %`
        expect(nm(wet!.side), told).toBeGreaterThanOrEqual(nm(dry!.side))
        expect(nm(wet!.sawn), told).toBeGreaterThanOrEqual(nm(wet!.side))
        const rough = roughThickness(wet!.nominal!)
        const thick = wet!.surfaced ? surfacedThickness(rough) : rough
        expect(nm(wet!.layerThickness), told).toBeLessThanOrEqual(nm(thick))
        if (sawn === 8) expect(nm(wet!.sawn), told).toBe(nm(dry!.sawn))
      }
  })

  const kindsOf = (job: object) => planJob(readJob(job), shop, woods).operations.map(({ kind }) => kind)

  it('finishes nothing wet, and trues what was left square once it is dry', () => {
    const stations = [
      { at: '0', diameter: '2', then: 'straight' },
      { at: '5', diameter: '2', then: 'square', side: '2 1/4' },
      { at: '8' },
    ]
    const stout = { ...benchLeg(), joints: [], profile: { stations }, moisture: 25 }
    expect(kindsOf(stout).filter((kind) => ['dry', 'plane-dried', 'remount'].includes(kind))).toEqual([
      'dry',
      'plane-dried',
      'remount',
    ])
    const { cautions } = planJob(readJob(stout), shop, woods)
    expect(cautions.some(({ about, text }) => about === 'blank' && text.startsWith('Wet stock'))).toBe(true)
  })

  it('dries slender legs as squares, and planes them to their side only then', () => {
    const slender = planJob(readJob({ ...benchLeg(), moisture: 25 }), shop, woods)
    const names = slender.operations.map(({ name }) => name)
    const [dried, planed] = [/Dry the squares/, /to 2-1\/4 in square/].map((told) =>
      names.findIndex((name) => told.test(name)),
    )
    expect(dried).toBeGreaterThanOrEqual(0)
    expect(planed).toBeGreaterThan(dried!)
    expect(names.some((name) => /Plane the dried/.test(name))).toBe(false)
  })

  it('dries what is sawn wet before it is glued up, and waits for that', () => {
    const thick = { ...benchLeg(), lumber: { moisture: 40 } }
    const [wet, dry] = [thick, benchLeg()].map((job) =>
      planJob(readJob(job), { ...shop, stock: defaultShop.stock }, woods),
    )
    const places = [/Dry the strips/, /[Gg]lue/].map((told) =>
      wet!.operations.findIndex(({ name }) => told.test(name)),
    )
    expect(places[0]).toBeGreaterThanOrEqual(0)
    expect(places[1]).toBeGreaterThan(places[0]!)
    // four weeks for a night of 16 h: common practice, no source
    expect(wet!.time.elapsed.waitDays - dry!.time.elapsed.waitDays).toBeGreaterThanOrEqual(27)
    expect(dry!.operations.some(({ name }) => /^Dry/.test(name))).toBe(false)
  })

  it('adds for what green lumber shrinks, measured or not', () => {
    const green = (lumber: object, species = 'cherry-black') =>
      planJob(readJob({ ...dowel(), species, lumber: { dryness: 'green', ...lumber } }), shop, woods)
    // From fibre saturation on it is the same loss, however much more water there was (Wood Handbook ch. 4).
    const [unsaid, measured] = [green({}), green({ moisture: 40 })]
    expect(unsaid.blank.shrinkage!.across).toBeGreaterThan(0)
    expect(nm(unsaid.blank.sawn)).toBe(nm(measured.blank.sawn))
    expect(unsaid.blank.shrinkage!.from).toBe(58)
    expect(green({}, 'walnut-black').blank.shrinkage!.from).toBe(30)
    const told = unsaid.cautions.filter(({ text }) => /it is reckoned with/.test(text))
    expect(told.map(({ about }) => about)).toEqual(['blank'])
    expect(unsaid.operations.some(({ name }) => /^Dry the squares in stickers/.test(name))).toBe(true)
  })

  it('glues nothing wet: layers turned as wet as they are sawn are dried first all the same', () => {
    const stations = [
      { at: '0', diameter: '2 3/4', then: 'straight' },
      { at: '8', diameter: '2 3/4' },
    ]
    const stout = { ...benchLeg(), joints: [], profile: { stations }, moisture: 25 }
    const [glued, solid] = (['8/4', '16/4'] as const).map((nominal) =>
      planJob(readJob(stout), { ...shop, stock: [{ species: '*', nominal }] }, woods),
    )
    expect([glued!.blank.layers > 1, solid!.blank.layers]).toEqual([true, 1])
    const kinds = glued!.operations.map(({ kind }) => kind)
    const names = glued!.operations.map(({ name }) => name)
    const dried = names.indexOf('Dry the strips in stickers')
    expect(dried).toBeGreaterThanOrEqual(0)
    expect(kinds.indexOf('glue')).toBeGreaterThan(dried)
    for (const kind of ['dry', 'true-up', 'plane-dried'] as const) expect(kinds).not.toContain(kind)
    expect(solid!.operations.map(({ kind }) => kind)).toContain('dry')
    // The four weeks are waited for once: common practice, no source.
    expect(glued!.time.elapsed.why.match(/\w+ (dry|dries), at least/g)).toEqual(['strips dry, at least'])
    expect(glued!.time.elapsed.waitDays).toBeGreaterThanOrEqual(4 * 7)
    // What is dry when it is glued has its last size then, but is sawn larger for what it shrinks.
    expect(glued!.blank.shrinkage).toMatchObject({ onLathe: 0 })
    expect(glued!.blank.shrinkage!.across).toBeGreaterThan(0)
    expect(nm(glued!.blank.side)).toBeLessThan(nm(solid!.blank.side))
  })

  it('roughs green wood so large that its oval still holds the part and what is sanded off, in every wood', () => {
    const stock = [{ species: '*', nominal: '12/4' as const }]
    const stations = [
      { at: '0', diameter: '2', then: 'straight' },
      { at: '6', diameter: '2' },
    ]
    const job = { ...benchLeg(), joints: [], profile: { stations }, moisture: 30 }
    const known = woods.filter(
      ({ shrinkTangentialPct, shrinkRadialPct }) => shrinkTangentialPct && shrinkRadialPct,
    )
    expect(known.length).toBeGreaterThan(50)
    for (const { key, shrinkTangentialPct, shrinkRadialPct } of known) {
      const { operations, blank } = planJob(readJob({ ...job, species: key }), { ...shop, stock }, woods)
      const rough = operations.find(({ kind }) => kind === 'rough')!
      const wet = rough.work.surface / Math.PI / rough.work.length
      // Wood Handbook eq. 13-3 from fibre saturation, 30 %, to 8 %.
      const most = Math.max(shrinkTangentialPct!, shrinkRadialPct!)
      const narrow = wet * (1 - (22 * most) / 3000)
      expect(narrow, key).toBeGreaterThanOrEqual(inches(2 + 1 / 64))
      expect(nm(wet), key).toBeLessThanOrEqual(nm(blank.side))
    }
  })
})
