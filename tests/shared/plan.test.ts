import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { cutBreaches } from '../../shared/cutting/check.ts'
import { ringAngle } from '../../shared/cutting/rings.ts'
import { blanksOf } from '../../shared/cutting/sheet.ts'
import { readJob } from '../../shared/job.ts'
import { numberedPieces } from '../../shared/piece.ts'
import { type Plan, partsOf, planJob, sheetOf } from '../../shared/plan.ts'
import { Problem } from '../../shared/problem.ts'
import { defaultShop, type Shop } from '../../shared/shop.ts'
import type { Species } from '../../shared/wood/species.ts'
import { benchLeg, dowel, fortyStations, knob } from '../jobs.ts'

const woods = JSON.parse(
  readFileSync(new URL('../../seed/species.json', import.meta.url), 'utf8'),
) as Species[]
const planOf = (file: unknown, shop: Shop = defaultShop): Plan => planJob(readJob(file), shop, woods)
const inch = 25.4

/** Composite Simpson's rule, to have the solids from somewhere else. */
function simpson(f: (x: number) => number, a: number, b: number, n = 20_000): number {
  const h = (b - a) / n
  let sum = f(a) + f(b)
  for (let i = 1; i < n; i++) sum += (i % 2 ? 4 : 2) * f(a + i * h)
  return (sum * h) / 3
}

const allNumbers = (value: unknown, path = ''): [string, number][] =>
  typeof value === 'number'
    ? [[path, value]]
    : typeof value === 'object' && value !== null
      ? Object.entries(value).flatMap(([k, v]) => allNumbers(v, `${path}.${k}`))
      : []

describe('planJob for a mortised leg', () => {
  const plan = planOf(benchLeg())

  it('gives volume and centroid as integrated by another rule', () => {
    // Frustum 1 → 1-1/4 in; bead with sagitta 1/4 in over 1/2 in (a half circle); taper 1-1/4 → 1-7/8; square.
    const [r0, r1, r2] = [0.5 * inch, 0.625 * inch, 0.9375 * inch]
    const [x1, x2, x3, x4] = [1.25 * inch, 1.75 * inch, 12 * inch, 16.5 * inch]
    const bead = (x: number): number =>
      r1 + Math.sqrt(Math.max(0, (0.25 * inch) ** 2 - (x - (x1 + x2) / 2) ** 2))
    const area = (x: number): number =>
      x < x1
        ? Math.PI * (r0 + ((r1 - r0) * x) / x1) ** 2
        : x < x2
          ? Math.PI * bead(x) ** 2
          : x < x3
            ? Math.PI * (r1 + ((r2 - r1) * (x - x2)) / (x3 - x2)) ** 2
            : (2.25 * inch) ** 2
    const spans: [number, number][] = [
      [0, x1 - 1e-9],
      [x1 + 1e-9, x2 - 1e-9],
      [x2, x3 - 1e-9],
      [x3, x4],
    ] // prettier-ignore
    const volume = spans.reduce((sum, [a, b]) => sum + simpson(area, a, b), 0)
    const moment = spans.reduce((sum, [a, b]) => sum + simpson((x) => x * area(x), a, b), 0)
    expect(plan.part.volume / volume).toBeCloseTo(1, 6)
    expect(plan.part.centroid / (moment / volume)).toBeCloseTo(1, 6)
  })

  it('gives the mass by the handbook’s equations', () => {
    // Wood Handbook FPL-GTR-282 eq. 4-13 and 4-14; black walnut, green specific gravity 0.51 (table 5-3b).
    const gravity = 0.51 / (1 - 0.265 * 0.51 * (1 - 8 / 30))
    const density = 1000 * gravity * 1.08
    expect(plan.part.density).toBeCloseTo(density, 6)
    expect(plan.part.mass).toBeCloseTo(plan.part.volume * density * 1e-6, 6)
  })

  it('leaves waste at the turned foot and a horn at the mortised top', () => {
    // Foot at the tail: 1/2 in. Top driven and square, the mortise ends 3/4 in from it: a horn of 3/4 in.
    expect(plan.blank.length / inch).toBeCloseTo(16.5 + 0.5 + 0.75, 9)
    expect(plan.blank.side / inch).toBeCloseTo(2.25, 9)
  })

  it('glues up an odd number of layers where no stock is thick enough', () => {
    // 2-1/4 + 1/4 in planing is over 8/4. Three layers of 4/4 give 3 × (1 − 1/16) = 2-13/16 in.
    expect(plan.blank).toMatchObject({ layers: 3, nominal: '4/4' })
    expect(plan.blank.layerThickness / inch).toBeCloseTo(2.25 / 3 + 1 / 16, 9)
  })

  it('saws it from one board where the shop has thick stock', () => {
    const shop: Shop = {
      ...defaultShop,
      stock: [...defaultShop.stock, { species: '*', nominal: '10/4', pricePerBoardFoot: 16 }],
    }
    const { blank } = planOf(benchLeg(), shop)
    // 2-1/4 + 1/4 in planing = 2-1/2 in: an exact fit in 10/4.
    expect(blank).toMatchObject({ layers: 1, nominal: '10/4' })
    expect(blank.sawn / inch).toBeCloseTo(2.5, 9)
  })

  it('pays the price of the stock it takes, rough or surfaced', () => {
    const stock: Shop['stock'] = [
      { species: '*', nominal: '6/4', pricePerBoardFoot: 10 },
      { species: '*', nominal: '6/4', surfaced: true, pricePerBoardFoot: 14 },
    ]
    // 30 + 3 = 33 mm; 6/4 surfaced on two sides leaves 1-5/16 in = 33.34 mm, so both would do: the cheaper is taken.
    const { blank, cutOrder } = planOf(dowel(), { ...defaultShop, stock })
    expect(blank.surfaced).toBeUndefined()
    expect(cutOrder.boards[0]!.pricePerBoardFoot).toBe(10)
    const dear = planOf(dowel(), {
      ...defaultShop,
      stock: [{ ...stock[0]!, pricePerBoardFoot: 20 }, stock[1]!],
    })
    expect(dear.blank.surfaced).toBe(true)
    expect(dear.cutOrder.boards[0]!.pricePerBoardFoot).toBe(14)
  })

  it('cuts one spare for eight at 90 %', () => {
    // p = 2/50. P(8 of 8) = 0.96^8 = 0.72; P(8 or more of 9) = 0.952.
    expect(plan.blank).toMatchObject({ need: 8, spares: 1, count: 9 })
  })

  it('gives a cut plan that the checker has nothing against', () => {
    expect(cutBreaches(plan.cutOrder, plan.cut)).toEqual([])
    expect(plan.cut.unmet).toEqual([])
    expect(plan.cut.cost).toBeGreaterThanOrEqual(plan.cut.lowerBound)
  })

  it('says that the wood has no price instead of counting it as nothing', () => {
    expect(
      plan.cautions
        .filter((c) => c.about === 'price')
        .map((c) => c.text)
        .join(),
    ).toMatch(/no price/)
  })

  it('cuts the mortise before it turns, and checks the set before anything is parted', () => {
    const at = (kind: string): number => plan.operations.findIndex((o) => o.kind === kind)
    expect(at('mortise')).toBeGreaterThan(-1)
    expect(at('mortise')).toBeLessThan(at('mount'))
    expect(at('shoulder')).toBeLessThan(at('rough'))
    expect(at('check-set')).toBeLessThan(at('nub'))
  })
})

describe('planJob', () => {
  it('gives a turned blank its rounding, up to a whole millimetre', () => {
    // 30 + 3 = 33 mm; length 400 + 12.7 + 12.7 + 6.35 for the spur at the driven end.
    const { blank } = planOf(dowel())
    expect(blank.side).toBeCloseTo(33, 9)
    expect(blank.sawn).toBe(blank.side)
    expect(blank.length).toBeCloseTo(431.75, 9)
  })

  it('says when thick stock misses by so little that a full board would do', () => {
    // 1-3/4 in + 1/4 in planing + bow of 25 in: (25 + 0 − 24) in / 384 over 2 in.
    const stations = [
      { at: '0', then: 'square', side: '1 3/4' },
      { at: '6', diameter: '1 1/2' },
      { at: '19', diameter: '1 1/2', then: 'square', side: '1 3/4' },
      { at: '25' },
    ]
    const { blank } = planOf({
      name: 'Baluster',
      units: 'in',
      species: 'oak-white',
      quantity: 24,
      profile: { stations },
    })
    expect(blank.layers).toBe(3)
    expect(blank.cautions.join(' ')).toMatch(/8\/4 misses by only/)
  })

  it('turns no more parts to a stick than are wanted', () => {
    expect(planOf({ ...knob(), quantity: 2 }).blank.stock.perBlank).toBe(2)
  })

  it('says lengths in the cautions of an inch job in inches', () => {
    expect(planOf(benchLeg()).checkStations[0]!.caution).toMatch(
      /Jaws 1\/8 in wide do not reach the wood at 1-3\/4 in/,
    )
  })

  it('turns several short parts to a stick no longer than allowed', () => {
    const { blank } = planOf(knob())
    expect(blank.length).toBeLessThanOrEqual(12 * inch)
    // 12 in: two ends of 1/2 in, a chuck tenon of 1/2 in, n × 40 mm and (n − 1) × 1/4 in:
    // five take 263.5 mm, six 309.9 mm, which is over 304.8 mm.
    expect(blank.stock.perBlank).toBe(5)
    expect(blank.need).toBe(5)
  })

  it('gives a plain dowel and a forty-station newel operations of their own', () => {
    const [plain, rich] = [planOf(dowel()), planOf(fortyStations())]
    const kinds = (plan: Plan): Set<string> => new Set(plan.operations.map((o) => o.kind))
    expect(
      [...kinds(plain)].filter((k) => ['bead', 'cove', 'shoulder', 'strike-shoulders'].includes(k)),
    ).toEqual([])
    expect(rich.operations.filter((o) => o.kind === 'cove')).not.toHaveLength(0)
    expect(rich.operations.filter((o) => o.kind === 'shoulder')).toHaveLength(2)
    expect(rich.operations.length).toBeGreaterThan(2 * plain.operations.length)
  })

  it('adds the stages up to the whole', () => {
    for (const file of [benchLeg(), dowel(), knob(), fortyStations()]) {
      const { time } = planOf(file)
      const stages = Object.values(time.byStage).reduce((sum, minutes) => sum + minutes, 0)
      expect(stages).toBeCloseTo(time.minutes, 9)
      expect(time.p10).toBeLessThan(time.p50)
      expect(time.p50).toBeLessThan(time.p90)
    }
  })

  it('never gives a speed above its ceiling', () => {
    for (const file of [benchLeg(), dowel(), knob(), fortyStations()])
      for (const o of planOf(file).operations)
        if (o.rpm !== undefined) expect(o.rpm).toBeLessThanOrEqual(o.rpmCeiling!)
  })

  it('keeps slender work in a wood of unknown stiffness slow and on a steady rest', () => {
    const slender = (species: string, more: object = {}) =>
      planOf({
        name: 'Slender rods',
        units: 'in',
        species,
        quantity: 2,
        profile: {
          stations: [
            { at: '0', diameter: '1/2 in' },
            { at: '30', diameter: '1/2 in' },
          ],
        },
        ...more,
      })
    const apple = slender('apple')
    expect(apple.part.whip).toBeUndefined()
    // A round bar on two supports, first mode (π/8)(d/L²)√(E/ρ) a second; half of it is the ceiling. The stand-in: 7 GPa, 840 kg/m³.
    const critical = 60 * (Math.PI / 8) * (0.0127 / 0.762 ** 2) * Math.sqrt(7e9 / 840)
    const shaped = apple.operations.find((o) => o.kind === 'straight')!
    expect(shaped.rpmCeiling! / (critical / 2)).toBeCloseTo(1, 3)
    expect(apple.operations.map((o) => o.kind)).toContain('journal')
    const texts = apple.cautions.map((c) => c.text)
    expect(texts.some((text) => /stand-in/.test(text))).toBe(true)
    expect(texts.some((text) => /^A steady rest is/.test(text))).toBe(true)
    // Never faster than in a wood that is known, whatever the stage.
    for (const known of ['maple-sugar', 'cherry-black', 'willow-black', 'hickory-pignut'])
      for (const o of slender(known).operations.filter((o) => o.rpmCeiling !== undefined)) {
        const same = apple.operations.find((a) => a.key === o.key)
        if (same) expect(same.rpmCeiling, `${known} ${o.key}`).toBeLessThanOrEqual(o.rpmCeiling!)
      }
    expect(slender('maple-sugar').cautions.some((c) => /stand-in/.test(c.text))).toBe(false)
  })

  it('asks for a steady rest by length alone, whatever the wood', () => {
    // 25 mm × 280 mm is 11.2 diameters; stiff enough to sag far less than 0.25 mm under 10 N.
    for (const species of ['apple', 'maple-sugar']) {
      const stations = (length: number) => [
        { at: 0, diameter: 25 },
        { at: length, diameter: 25 },
      ]
      const rods = (length: number) =>
        planOf({ ...dowel(), species, profile: { stations: stations(length) } }).operations.map((o) => o.kind)
      expect(rods(280), species).toContain('journal')
      expect(rods(270), species).not.toContain('journal')
    }
  })

  it('says one thing of how a split pair is driven', () => {
    const pair = (mount: string) =>
      planOf({ ...dowel(), mount, profile: { ...dowel().profile, split: true } })
        .cautions.filter((c) => /glue line/.test(c.text))
        .map((c) => c.text)
    expect(pair('spur').length).toBeGreaterThan(1)
    for (const text of pair('spur')) expect(text).toMatch(/across (it|the glue line).*cup/)
    for (const text of [...pair('chuck'), ...pair('cup')]) {
      expect(text).toMatch(/cup/)
      expect(text).not.toMatch(/spur/)
    }
  })

  it('treats a turned end that a tenon joint names as a tenon all the way', () => {
    const rung = (joints: object[], tenon?: boolean) =>
      planOf({
        name: 'Rungs',
        units: 'in',
        species: 'maple-sugar',
        quantity: 4,
        profile: {
          stations: [
            { at: '0', diameter: '3/4', check: true, ...(tenon !== undefined && { tenon }) },
            { at: '1', diameter: '3/4' },
            { at: '1', diameter: '1 1/4' },
            { at: '9', diameter: '1 1/4' },
          ],
        },
        joints,
      })
    const named = rung([{ kind: 'tenon', at: '0', size: ['3/4'], depth: '1' }])
    const marked = rung([], true)
    expect(named.checkStations[0]).toMatchObject({
      fixed: true,
      tenon: true,
      plus: 0.396875,
      minus: 0.396875,
    })
    const size = named.operations.find((o) => o.caliperStation === 's0')!
    expect(size.caliper! / inch).toBeCloseTo(0.75 + 1 / 16, 9)
    expect(named.operations.map((o) => o.key)).toEqual(marked.operations.map((o) => o.key))
    expect(named.operations.find((o) => o.kind === 'sand')!.where![0] / inch).toBeCloseTo(1, 9)
  })

  it('gives the same plan for the same job', () => {
    expect(planOf(fortyStations())).toEqual(planOf(fortyStations()))
  })

  it('lets no number leave that is none', () => {
    for (const file of [benchLeg(), dowel(), knob(), fortyStations()])
      expect(allNumbers(planOf(file)).filter(([, n]) => !Number.isFinite(n))).toEqual([])
  })

  it('plans every wood of the table, and says what it cannot know', () => {
    for (const wood of woods) {
      const plan = planOf({ ...dowel(), species: wood.key, moisture: 12 })
      if (plan.part.mass === undefined || plan.part.whip === undefined || plan.part.movement === undefined)
        expect(
          plan.cautions.some((c) => c.about === 'part'),
          wood.key,
        ).toBe(true)
      if (!wood.safe)
        expect(
          plan.cautions.some((c) => c.about === 'job'),
          wood.key,
        ).toBe(true)
    }
  })

  it('names the nearest woods when it knows none of that name', () => {
    let refusal: unknown
    try {
      planOf({ ...dowel(), species: 'walnut-blak' })
    } catch (error) {
      refusal = error
    }
    expect(refusal).toBeInstanceOf(Problem)
    expect((refusal as Problem).errors[0]).toMatchObject({ path: 'species' })
    expect((refusal as Problem).errors[0]!.message).toMatch(/walnut-black/)
  })

  it('knows a wood by its name as by its key, with the stock and the price of that wood', () => {
    const stock = [
      { species: 'walnut-black', nominal: '8/4' as const, pricePerBoardFoot: 13 },
      { species: '*', nominal: '8/4' as const, pricePerBoardFoot: 5 },
    ]
    const named = planOf({ ...dowel(), species: 'Walnut, black' }, { ...defaultShop, stock })
    expect(named.job.species).toBe('walnut-black')
    expect(named.yard.species).toBe('walnut-black')
    expect(named.cutOrder.boards[0]!.pricePerBoardFoot).toBe(13)
  })

  it('finishes each half of a split pair over half of the pair’s surface', () => {
    const shop: Shop = { ...defaultShop, finishPerSquareMetre: 1000 }
    const split = { ...dowel(), profile: { ...dowel().profile, split: true } }
    const plan = planOf(split, shop)
    const halves = plan.blank.count * 2
    // A cylinder of 30 by 400 mm with both its ends, in m², by the rule of the circle.
    const pair = (Math.PI * 30 * 400 + 2 * Math.PI * 15 ** 2) / 1e6
    const finish = plan.quote!.lines.find(({ key }) => key === 'finish')!
    expect(finish.amount).toBeCloseTo((halves / 2) * pair * 1000, 2)
  })

  it('says which fields of the file it did not read, whatever they are called', () => {
    const plan = planOf({ ...dowel(), quantitty: 4, constructor: 'by hand' })
    expect(plan.cautions.map((c) => c.text).join()).toMatch(/quantitty.*constructor/s)
  })
})

describe('planJob for stair parts', () => {
  const baluster = (more: object = {}) => ({ ...dowel(), use: 'guard', quantity: 10, ...more })
  const told = (file: unknown) =>
    planOf(file)
      .cautions.filter((c) => c.about === 'stair')
      .map((c) => c.text)
      .join(' ')

  it('spaces and counts them, beside who decides', () => {
    const { stair } = planOf(baluster({ stair: { run: 1200 } }))
    // 30 mm parts, a 4 in ball: 9 leave (1200 − 270)/10 = 93 mm, 8 leave 106.7 mm
    expect(stair!.run).toMatchObject({ count: 9 })
    expect(stair!.run!.clear).toBeCloseTo(93, 9)
    expect(stair!.spacingBelow).toBeCloseTo(131.6, 9)
    expect(told(baluster())).toMatch(/The local code and whoever inspects by it decide/)
  })

  it('bends them by the strength of their wood', () => {
    // sugar maple: modulus of rupture 109 MPa at 12 %, Wood Handbook table 5-3a
    const { bending } = planOf(baluster()).stair!
    expect(bending!.rupture).toBeCloseTo(109, 6)
    const moment = (222.4110807 * (2 * 400 - 304.8)) / 8
    expect(bending!.stress).toBeCloseTo((32 * moment) / Math.PI / 30 ** 3, 5)
  })

  it('has no such figures for furniture or for halves, and says what it left aside', () => {
    expect(planOf(dowel()).stair).toBeUndefined()
    expect(told(dowel())).toBe('')
    expect(told({ ...dowel(), stair: { run: 1200 } })).toMatch(/left aside: the job’s use is furniture/)
    const halves = baluster({ profile: { ...dowel().profile, split: true } })
    expect(planOf(halves).stair).toBeUndefined()
    expect(told(halves)).toMatch(/part that is split/)
  })
})

describe('planJob for mirrored pairs', () => {
  const joints = [
    { kind: 'mortise', at: '14 1/2', face: 'A', size: ['3/8', '2 1/2'], depth: '3/4' },
    { kind: 'mortise', at: '14', face: 'B', size: ['3/8', '2 1/2'], depth: '3/4' },
  ]
  const told = (more: object) =>
    planOf({ ...benchLeg(), joints, mirrored: true, ...more })
      .cautions.map((c) => c.text)
      .join(' ')

  it('says which numbers are which hand, and once that right hands are marked out mirrored', () => {
    expect(told({})).toMatch(/Odd numbers are left hands, as drawn, even numbers right hands/)
    expect(told({}).match(/marked out in mirror image/g)).toHaveLength(1)
    expect(told({ mirrored: false })).not.toMatch(/hands/)
  })

  it('says that an odd number makes no pairs', () => {
    expect(told({ quantity: 7 })).toMatch(/Mirrored pairs of 7: one left hand more/)
    expect(told({})).not.toMatch(/one left hand more/)
  })

  it('says that nothing tells left from right where the joints do not', () => {
    expect(told({ joints: [joints[0]] })).toMatch(/No joint tells left from right/)
  })
})

describe('planJob for a lot of wood', () => {
  const volume = planOf(benchLeg()).part.volume
  const shop = (share: number): Shop => ({
    ...defaultShop,
    lots: [
      {
        name: 'Autumn walnut',
        species: 'walnut-black',
        weighings: [{ mass: share * planOf(benchLeg()).part.mass!, volume, moisture: 8 }],
      },
    ],
  })
  const file = { ...benchLeg(), lot: 'Autumn walnut' }

  it('weighs part and blank by what a finished piece weighed, and whips by it', () => {
    const [plain, heavy] = [planOf(file), planOf(file, shop(1.1))]
    expect(heavy.part.lot).toMatchObject({ name: 'Autumn walnut', weighings: 1, cautions: [] })
    expect(heavy.part.mass! / plain.part.mass!).toBeCloseTo(1.1, 9)
    expect(heavy.blank.mass! / plain.blank.mass!).toBeCloseTo(1.1, 9)
    // speed of a mode goes by one over the square root of the mass
    expect(plain.part.whip!.criticalRpm / heavy.part.whip!.criticalRpm).toBeCloseTo(Math.sqrt(1.1), 6)
    expect(planOf(benchLeg(), shop(1.1)).part.lot).toBeUndefined()
  })

  it('says when the shop has no lot of that name', () => {
    const { part, cautions } = planOf(file)
    expect(part.lot).toBeUndefined()
    expect(cautions.map((c) => c.text)).toContain(
      'The shop has no lot called Autumn walnut: the table’s density holds.',
    )
  })

  it('does not lighten a part by a slip of the scale', () => {
    const slipped = planOf(file, shop(0.01))
    expect(slipped.part.mass).toBeCloseTo(planOf(file).part.mass!, 9)
    expect(slipped.cautions.some((c) => c.about === 'part' && /look at scale/.test(c.text))).toBe(true)
  })
})

describe('planJob with boards on hand', () => {
  // Blanks of the dowel are 33 × 33 × 431.75 mm.
  const rackBoard = (key: string, over: object = {}) => ({
    key,
    species: 'cherry-black',
    width: 150,
    length: 2400,
    thickness: 50,
    count: 1,
    ...over,
  })
  const file = { ...dowel(), species: 'cherry-black' }
  const shop = { ...defaultShop, stock: defaultShop.stock.map((row) => ({ ...row, pricePerBoardFoot: 10 })) }
  const from = (onHand: ReturnType<typeof rackBoard>[], over: object = {}): Plan =>
    planJob(readJob({ ...file, ...over }), shop, woods, { onHand })

  it('buys nothing and asks the yard for nothing where they are enough, and the price still has the wood in it', () => {
    const plan = from([rackBoard('a', { count: 4, pricePerBoardFoot: 6 })])
    const used = plan.cut.boards.length * ((50 * 150 * 2400) / (144 * inch ** 3))
    expect(plan.cut.boards.every(({ key, onHand }) => key === 'a' && onHand)).toBe(true)
    expect(plan.boardFeet).toMatchObject({ bought: 0, tallied: 0 })
    expect(plan.boardFeet.onHand).toBeCloseTo(used, 9)
    expect(plan.yard.boardFeet.ask).toBe(0)
    const wood = plan.quote!.lines.find(({ key }) => key === 'wood')!
    expect(wood.amount).toBeCloseTo(used * 6, 1)
    expect(wood.why).toMatch(/on hand at what they are worth/)
    const told = plan.cautions.map(({ text }) => text)
    expect(plan.yard.notes.filter((note) => told.includes(note))).toEqual([])
  })

  it('buys only what they do not yield', () => {
    const without = planJob(readJob({ ...file, quantity: 60 }), shop, woods)
    const plan = from([rackBoard('a')], { quantity: 60 })
    expect(plan.cut.boards).toContainEqual(expect.objectContaining({ key: 'a', onHand: true }))
    expect(plan.cut.cost).toBeLessThan(without.cut.cost)
    expect(plan.yard.boardFeet.net).toBeLessThan(without.yard.boardFeet.net)
    expect(plan.yard.boardFeet.net).toBeGreaterThan(0)
    expect(cutBreaches(plan.cutOrder, plan.cut)).toEqual([])
  })

  it('leaves them alone where the job says so, and where they are of another wood', () => {
    const apart = { lumber: { fromRack: false } }
    const alone = planJob(readJob({ ...file, ...apart }), shop, woods)
    expect(from([rackBoard('a')], apart)).toEqual(alone)
    expect(from([rackBoard('a', { species: 'maple-sugar' })]).cut).toEqual(alone.cut)
  })

  it('cuts around sapwood unless the job allows it', () => {
    const sappy = rackBoard('a', { count: 4, defects: [{ from: 0, to: 2400, kind: 'sap' }] })
    expect(from([sappy]).cut.boards.some(({ onHand }) => onHand)).toBe(false)
    expect(from([sappy], { lumber: { sap: 'allowed' } }).cut.boards.every(({ onHand }) => onHand)).toBe(true)
  })

  it('warns of a board far from the moisture that the job is sawn at', () => {
    const texts = (over: object) =>
      from([rackBoard('a', { count: 4, moisture: 15 })], over)
        .cautions.map(({ text }) => text)
        .join()
    expect(texts({})).toMatch(/Board a is at 15 % moisture/)
    expect(texts({ lumber: { moisture: 14 } })).not.toMatch(/Board a is at 15/)
  })
})

describe('planJob’s cutting sheet', () => {
  const blanksIn = (plan: Plan) => sheetOf(plan).boards.flatMap(blanksOf)
  const wide = (over: object = {}) => ({
    key: 'wide',
    species: 'cherry-black',
    width: 200,
    length: 2400,
    thickness: 50,
    count: 1,
    ...over,
  })
  const fileOf = (over: object) => ({ ...dowel(), species: 'cherry-black', ...over })

  it('numbers blanks as the batch will number its pieces, several to a stick and glue-ups too', () => {
    for (const file of [dowel(), knob(), benchLeg()]) {
      const plan = planOf(file)
      const numbers = new Set(blanksIn(plan).flatMap(({ pieces }) => pieces))
      expect([...numbers].sort((a, b) => a - b)).toEqual(
        numberedPieces(partsOf(plan), plan.job.quantity).map(({ number }) => number),
      )
      expect(plan.cut.boards).toEqual(sheetOf(plan).boards)
    }
    const layers = blanksIn(planOf(benchLeg())).filter(({ pieces }) => pieces[0] === 1)
    expect(layers.map(({ label }) => label)).toEqual(['1a', '1b', '1c'])
  })

  it('moves strips to where the rings look best only where the job asks for rift', () => {
    const heart = { across: 100, below: 110 }
    const cut = (grain: string) =>
      planJob(readJob(fileOf({ grain, quantity: 6 })), defaultShop, woods, { onHand: [wide({ heart })] })
    const [any, rift] = [cut('any'), cut('rift')]
    const off = (plan: Plan) =>
      blanksIn(plan).map(({ across: [low, high] }) =>
        Math.abs(ringAngle(heart, { across: (low + high) / 2, below: 25 }) - 45),
      )
    const sum = (numbers: number[]) => numbers.reduce((a, b) => a + b, 0)
    expect(rift.cut.boards.map(({ key }) => key)).toEqual(['wide'])
    expect(sum(off(rift))).toBeLessThan(sum(off(any)))
    expect(rift.cut.cost).toBe(any.cut.cost)
    expect(cutBreaches(rift.cutOrder, rift.cut)).toEqual([])
  })

  it('takes all from one board where the job insists, and says so where none is large enough', () => {
    const small = { key: 'small', width: 70, length: 950, count: 9 }
    const cut = (rack: ReturnType<typeof wide>[], oneBoard: boolean) =>
      planJob(readJob(fileOf({ quantity: 6, lumber: { oneBoard } })), defaultShop, woods, { onHand: rack })
    const rack = [wide(small), wide({ length: 3000 })]
    expect(cut(rack, false).cut.boards.length).toBeGreaterThan(1)
    expect(cut(rack, true).cut.boards.map(({ key }) => key)).toEqual(['wide'])
    const none = cut([wide(small)], true)
    expect(none.cautions.map(({ text }) => text).join()).toMatch(
      /All from one board is wished for, but no board/,
    )
  })
})
