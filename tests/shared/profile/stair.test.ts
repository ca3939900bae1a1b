import { describe, expect, it } from 'vitest'
import type { PlacedJoint } from '../../../shared/profile/joint-reach.ts'
import type { Profile } from '../../../shared/profile/profile.ts'
import { type StairInput, stairOf } from '../../../shared/profile/stair.ts'
import { near } from '../../near.ts'
import { oneSpan, profileOf, station } from './build.ts'

const inch = 25.4
const maple = { name: 'Maple, sugar', morMPa: 109, serviceMoisture: 8 }

const asked = (profile: Profile, more: Partial<StairInput> = {}): StairInput => ({
  profile,
  joints: [],
  use: 'guard',
  wishes: {},
  quantity: 20,
  tolerance: 0.8,
  wood: maple,
  style: 'mm',
  ...more,
})

/** A baluster with a tenon at both ends, thinner than all that shows. */
const baluster = profileOf(
  station(0, 15, 'straight', { tenon: true }),
  station(30, 15),
  station(30, 30),
  station(200, 30, 'cove', { depth: 4 }),
  station(220, 30),
  station(770, 24),
  station(770, 15, 'straight', { tenon: true }),
  station(800, 15),
)

describe('stairOf', () => {
  it('measures between the rails, tenons left out', () => {
    const { between, least } = stairOf(asked(baluster))
    expect(between).toEqual([30, 770])
    // root of the cove: 30 − 2 × 4 mm
    near(least, { at: 210, diameter: 22 }, 1e-9)
  })

  it('leaves out the tenons of a part left square, which are sawn', () => {
    const square = oneSpan('square', 900, 0, 0, { side: 35 })
    const tenon = (at: number): PlacedJoint => ({ kind: 'tenon', at, size: [12], depth: 25 })
    expect(stairOf(asked(square, { joints: [tenon(0), tenon(900)] })).between).toEqual([25, 875])
  })

  it('goes by what the job says shows', () => {
    const { between, least } = stairOf(asked(baluster, { wishes: { between: [250, 700] } }))
    expect(between).toEqual([250, 700])
    near(least.at, 700, 1e-9)
    near(least.diameter, 30 - (6 * (700 - 220)) / 550, 1e-9)
  })

  it('has the ball of its use, closer by the least diameter', () => {
    const guard = stairOf(asked(baluster))
    near([guard.gap, guard.spacingBelow], [4 * inch, 4 * inch + 22], 1e-9)
    const stair = stairOf(asked(baluster, { use: 'stair' }))
    near([stair.gap, stair.spacingBelow], [4.375 * inch, 4.375 * inch + 22], 1e-9)
    expect(stairOf(asked(baluster, { wishes: { gap: 90 } })).spacingBelow).toBe(112)
  })

  it('counts a run, and says when the job makes too few', () => {
    // (2000 − 16 × 22)/17 = 96.9 mm; with 15 it is 104.4 mm, over 101.6
    const { run, cautions } = stairOf(asked(baluster, { wishes: { run: 2000 }, quantity: 12 }))
    expect(run!.count).toBe(16)
    near(run!.clear, (2000 - 16 * 22) / 17, 1e-9)
    expect(cautions.join(' ')).toContain('One run takes 16 parts; the job makes 12.')
    expect(stairOf(asked(baluster)).cautions.join(' ')).toMatch(/No run is given/)
  })

  it('says of a run too small for a ball, or for a part, what is the matter', () => {
    const told = (run: number) => stairOf(asked(baluster, { wishes: { run } })).cautions.join(' ')
    expect(told(80)).toMatch(/smaller than the ball by itself/)
    const stout = asked(oneSpan('straight', 800, 150, 150), { wishes: { run: 120 } })
    expect(stairOf(stout).cautions.join(' ')).toMatch(/does not fit the run/)
  })

  it('says how much thinner than drawn a part may be', () => {
    expect(stairOf(asked(baluster)).cautions.join(' ')).toMatch(/may be 0\.8 mm thinner by its tolerance/)
    const close = { ...baluster, stations: baluster.stations.map((s) => ({ ...s, minus: 0.3 })) }
    expect(stairOf(asked(close)).cautions.join(' ')).toMatch(/may be 0\.3 mm thinner by its tolerance/)
  })

  it('says how many parts a run takes when they are as thin as their tolerance lets them be', () => {
    // 16 parts leave (2078 − 16 × 22)/17 = 101.5 mm; 0.8 mm thinner 102.3 mm, over 101.6, and 17 leave 94.4 mm
    const told = (run: number) => stairOf(asked(baluster, { wishes: { run } })).cautions.join(' ')
    expect(told(2078)).toMatch(/With 16 parts 0\.8 mm thinner than drawn .* too wide .* take 17\./)
    expect(told(2000)).not.toMatch(/thinner than drawn/)
  })

  it('warns of a ball larger and a load smaller than those of the model code', () => {
    const told = (wishes: StairInput['wishes'], use: 'guard' | 'stair' = 'guard') =>
      stairOf(asked(baluster, { wishes, use })).cautions.join(' ')
    expect(told({ gap: 4.375 * inch })).toMatch(
      /ball of 111\.1 mm is larger than a model code’s of 101\.6 mm/,
    )
    expect(told({ gap: 4.375 * inch }, 'stair')).not.toMatch(/larger than/)
    expect(told({ gap: 4 * inch })).not.toMatch(/larger than/)
    // 1 lb is 4.448 N
    expect(told({ load: 4.448 })).toMatch(/load of 4\.45 N \(1 lb\) is less than .* 222 N \(50 lb\)/)
    expect(told({ load: 222 })).not.toMatch(/less than/)
    expect(told({ load: 300 })).not.toMatch(/less than/)
  })

  it('writes its cautions in the style of the job, and limits so that they are not passed', () => {
    const cylinder = asked(oneSpan('straight', 800, 20, 20), { style: 'fraction', wishes: { run: 2000 } })
    const told = stairOf(cylinder).cautions.join(' ')
    // worst at the middle, 400 mm: 15-3/4 in is 400.05 mm
    expect(told).toContain('make it stouter 15-3/4 in from the foot')
    // 0.8 mm is 2.02/64 in: a part may be so much thinner, not less
    expect(told).toContain('may be 3/64 in thinner')
    expect(told).toContain('A ball of 4 in that')
    expect(told).not.toMatch(/\d mm/)
  })

  it('has figures enough that a ball reads larger than the code’s', () => {
    const told = (gap: number) =>
      stairOf(asked(baluster, { style: 'fraction', wishes: { gap } })).cautions.join(' ')
    // a thousandth of an inch over 4 in
    expect(told(4.003 * inch)).toContain('A ball of 4.003 in is larger than a model code’s of 4 in')
    expect(told(4.5 * inch)).toContain('A ball of 4-1/2 in is larger than a model code’s of 4 in')
  })

  it('bends the part under 50 lb on a foot of it unless another load is named', () => {
    const plain = oneSpan('straight', 800, 32, 32)
    const { bending } = stairOf(asked(plain))
    const load = 50 * 4.4482216152605
    near(bending!.load, load, { rel: 1e-12 })
    near(bending!.stress, (32 * load * (1600 - 12 * inch)) / 8 / Math.PI / 32 ** 3, { rel: 1e-9 })
    near(bending!.reserve, 109 / bending!.stress, { rel: 1e-12 })
    near(stairOf(asked(plain, { wishes: { load: 2 * load } })).bending!.reserve, bending!.reserve / 2, {
      rel: 1e-12,
    })
  })

  it('has no bending where the strength of the wood is not on record, and says so', () => {
    const { bending, whyNoBending, cautions } = stairOf(
      asked(baluster, { wood: { name: 'Apple', serviceMoisture: 8 } }),
    )
    expect(bending).toBeUndefined()
    expect(whyNoBending).toMatch(/modulus of rupture.*Apple/)
    expect(cautions).toContain(whyNoBending)
  })

  it('warns of a small reserve, and more plainly of none', () => {
    const told = (d: number) => stairOf(asked(oneSpan('straight', 800, d, d))).cautions.join(' ')
    expect(told(32)).not.toMatch(/reserve/)
    expect(told(20)).toMatch(/A reserve of 2\.\d is little/)
    expect(told(14)).toMatch(/more than Maple, sugar bears/)
  })

  it('says that a hole between the rails weakens the part, and nothing of one beyond them', () => {
    const hole = (at: number): PlacedJoint => ({ kind: 'hole', at, size: [8], depth: 15 })
    const told = (at: number) =>
      stairOf(asked(baluster, { joints: [hole(at)] })).cautions.filter((text) =>
        text.includes('bears less there'),
      )
    expect(told(400)).toEqual([expect.stringMatching(/^The hole 400\.0 mm .* not in the bending figures/)])
    expect(told(10)).toEqual([])
  })

  it('warns of wood that is wetter in use than its strength is for', () => {
    const wet = stairOf(asked(baluster, { wood: { ...maple, serviceMoisture: 16 } }))
    expect(wet.cautions.join(' ')).toMatch(/At 16 % in use the wood is weaker/)
    expect(stairOf(asked(baluster)).cautions.join(' ')).not.toMatch(/in use/)
  })

  it('leaves the decision to the local code, and never says that a part meets it', () => {
    for (const use of ['stair', 'guard'] as const) {
      const { cautions } = stairOf(asked(baluster, { use, wishes: { run: 2000, gap: 90, load: 300 } }))
      expect(cautions[0]).toMatch(/local code and whoever inspects by it decide/)
      expect(cautions.join(' ')).not.toMatch(/compl(y|ies|iant)|approved|conform/i)
    }
  })

  it('says that a figure of its own is second-hand, and only that', () => {
    const told = (wishes: StairInput['wishes']) =>
      stairOf(asked(baluster, { wishes })).cautions.filter((text) => text.includes('second-hand')).length
    expect([told({}), told({ gap: 90 }), told({ gap: 90, load: 300 })]).toEqual([2, 1, 0])
  })
})
