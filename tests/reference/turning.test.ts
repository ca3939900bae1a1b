import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { defaultAllowances } from '../../shared/blank/allowances.ts'
import { readJob } from '../../shared/job.ts'
import { gritJumps } from '../../shared/route/grits.ts'
import { octagonLine } from '../../shared/route/octagon.ts'
import { SQUARING } from '../../shared/route/operations/end.ts'
import { ROUGHING_STEP } from '../../shared/route/operations/rough.ts'
import { BRADS } from '../../shared/route/operations/story-stick.ts'
import { SMOOTHING_START } from '../../shared/route/operations/straight.ts'
import { defaultShop } from '../../shared/shop.ts'
import { BEVEL_OVER_THICKNESS, bevelAngle, grindingAngles, SKEW_EDGE } from '../../shared/turning/bevel.ts'
import { caliperSetting } from '../../shared/turning/calipers.ts'
import { edgeLife } from '../../shared/turning/edge.ts'
import { drivenRpm } from '../../shared/turning/pulleys.ts'
import { rimSpeed, speedFor, speedRules } from '../../shared/turning/speed.ts'
import { toolLife, toolLifeLaw } from '../../shared/turning/tool-life.ts'
import { inches, MM_PER_INCH, nm } from '../../shared/units/length.ts'
import { near } from '../near.ts'
import { data, row } from './rows.ts'

/** A lathe that goes as fast as anybody likes, so that the rule alone speaks. */
const boundless = { name: 'lathe', speeds: { least: 10, most: 1e6 } }
const ceilingRound = (inch: number): number =>
  speedFor({ lathe: boundless, diameter: inches(inch), trueness: 'round', work: 'shaping' }).rpmCeiling
const FEET_PER_METRE = 1000 / 304.8

/** The same to the nanometre: mm of ours against inches of theirs. */
const sameLengths = (mm: number[], inch: number[]): void =>
  expect(mm.map(nm)).toEqual(inch.map((length) => nm(inches(length))))

/** A figure printed to four places may be cut off after the last: one unit there. */
const LAST_PLACE = 1e-4

describe('speed', () => {
  it('follows from the pulleys of the drive as in the 1919 course', () => {
    const { inputs, expected, tolerance } = row('D001')
    near([drivenRpm(inputs.rpm1, inputs.d1, expected)], [inputs.rpm2], tolerance)
    const counter = row('D002')
    const { rpm_driver, rpm_driven, d_driven } = counter.inputs
    near([drivenRpm(rpm_driver, counter.expected, d_driven)], [rpm_driven], counter.tolerance)
  })

  it('never passes the top of what the 1919 course calls safe at 3 in', () => {
    const { expected } = row('D004')
    expect(ceilingRound(expected.limits_in[0])).toBeCloseTo(expected.rpm_up_to_3in[1], 9)
    // Above it belongs to slower steps: at 6 in the ceiling lies under the whole range for 3 in.
    expect(ceilingRound(expected.limits_in[1])).toBeLessThan(expected.rpm_up_to_3in[0])
  })

  it('agrees with that course in inches × rpm and at the rim', () => {
    const { inputs, expected, tolerance } = row('D005')
    const rims = inputs.rpm.map((rpm: number) => rimSpeed(inches(inputs.d_in), rpm))
    near(rims, expected.m_per_s, tolerance)
    near(
      rims.map((rim: number) => rim * FEET_PER_METRE * 60),
      expected.ft_per_min,
      tolerance,
    )
    expect(speedRules.ceilingRound).toBe(expected.product[1])
  })

  it('keeps the turners’ upper limit for every diameter', () => {
    const { inputs, expected, tolerance } = row('D006')
    near(inputs.d_in.map(ceilingRound), expected, tolerance)
  })

  it('keeps both limits in metric', () => {
    const { expected, tolerance } = row('D008')
    const rules = [speedRules.ceilingUntrue, speedRules.ceilingRound]
    near(
      rules.map((rule) => rule * MM_PER_INCH),
      expected.mm_rpm,
      tolerance,
    )
    const rims = rules.map((rule) => rimSpeed(MM_PER_INCH, rule))
    near(rims, expected.m_per_s, tolerance)
    near(
      rims.map((rim) => rim * FEET_PER_METRE * 60),
      expected.ft_per_min,
      tolerance,
    )
  })

  it('has a ceiling no lower than any speed two makers print, in the middle of their ranges', () => {
    const one = row('D009')
    one.inputs.bands_mm.forEach(([from, to]: [number, number], i: number) => {
      const ceiling = ceilingRound((from + to) / 2 / MM_PER_INCH)
      for (const rpm of one.expected[i]) expect(rpm, `${from} to ${to} mm`).toBeLessThanOrEqual(ceiling)
    })
    const two = row('D010')
    two.inputs.bands_in.forEach(([from, to]: [number, number | null], i: number) => {
      // The open range above 6 in is tried at 8 in, as far again as its neighbour is wide.
      const ceiling = ceilingRound((from + (to ?? from + 4)) / 2)
      for (const rpm of two.expected[i]) expect(rpm, `from ${from} in`).toBeLessThanOrEqual(ceiling)
    })
  })

  it('rises from roughing to shaping in every range, as both makers have it', () => {
    expect(speedRules.roughing).toBeLessThan(speedRules.shaping)
    for (const [roughing, shaping] of [...row('D009').expected, ...row('D010').expected])
      expect(roughing).toBeLessThanOrEqual(shaping)
  })

  it('recommends roughing and shaping by the rule behind the third table', () => {
    const { expected, tolerance } = row('D012')
    near(speedRules.roughing, expected.roughing, tolerance)
    near(speedRules.shaping, expected.general, tolerance)
    // Its finishing speed passes the ceiling, so that is not taken over.
    expect(expected.finishing).toBeGreaterThan(speedRules.ceilingRound)
    const table = data('lathe_speed_tables.json').table_3.rows as { to_in: number; roughing: number }[]
    for (const { to_in, roughing } of table.filter((r) => r.to_in >= 4))
      expect(Math.abs(roughing / (speedRules.roughing / to_in) - 1)).toBeLessThan(0.03)
  })
})

describe('edges', () => {
  it('are ground as the 1919 course has them', () => {
    const skew = row('D016')
    near(bevelAngle(skew.inputs.bevel_over_thickness, 2), skew.expected.included_deg, skew.tolerance)
    expect(SKEW_EDGE).toBe(skew.expected.edge_deg)
    const gouge = row('D017')
    near(bevelAngle(gouge.inputs.bevel_over_thickness), gouge.expected, gouge.tolerance)
    expect(BEVEL_OVER_THICKNESS).toBe(gouge.inputs.bevel_over_thickness)
    const parting = row('D018')
    expect(grindingAngles.parting).toBe(parting.expected.included_deg)
    const tool = defaultShop.tools.find((t) => t.kind === 'parting')!
    sameLengths([tool.width], [parting.expected.kerf_in])
  })

  it('last longer at a lower speed as Taylor’s law has it', () => {
    const halved = row('B022')
    const { n, speed_ratio: slower } = halved.inputs
    near(toolLife({ n, C: 1 }, slower), halved.expected, halved.tolerance)
    const book = row('B025')
    const law = { n: book.inputs.n, C: book.inputs.C }
    const ratio = toolLife(law, 200 * book.inputs.speed_ratio) / toolLife(law, 200)
    near(ratio, book.expected, book.tolerance)
  })

  it('last one minute at the speed that is the law’s C', () => {
    const { inputs, expected, tolerance } = row('B026')
    const lives = inputs.n.map((n: number) => toolLife({ n, C: 300 }, 300 * inputs.V_over_C))
    near(lives, expected, tolerance)
  })

  it('give the law back from two lives at two speeds', () => {
    const { inputs, expected, tolerance } = row('B024')
    const law = toolLifeLaw(inputs.points.map(([rim, minutes]: [number, number]) => ({ rim, minutes })))
    expect(law.fitted).toBe(true)
    // Its note: n to 0.001, C to the tolerance.
    expect(Math.abs(law.n - expected.n)).toBeLessThan(0.001)
    near(law.C, expected.C, tolerance)
  })

  it('last 10 to 20 minutes in the hardwoods turners use, with high-speed steel', () => {
    const [least, most] = row('D061').expected as [number, number]
    const lines = readFileSync(new URL('./species.csv', import.meta.url), 'utf8')
      .trim()
      .split('\n')
    const columns = lines[0]!.split(',')
    const hardness = (name: string): number => {
      const line = lines.find((l) => l.startsWith(name))!.match(/("[^"]*"|[^,]*)(,|$)/g)!
      return Number(line[columns.indexOf('side_hardness_12_N')]!.replace(/,$/, ''))
    }
    for (const name of [
      '"Walnut, black"',
      '"Cherry, black"',
      '"Maple, sugar"',
      '"Oak, white"',
      '"Beech, American"',
    ]) {
      const life = edgeLife({ steel: 'hss', cut: 'slicing', hardnessN: hardness(name) })
      expect(life, name).toBeGreaterThanOrEqual(least)
      expect(life, name).toBeLessThanOrEqual(most)
    }
  })
})

describe('what is left on and where to begin', () => {
  const allowances = defaultAllowances('in')

  it('leaves the calipers over by what the 1919 course leaves', () => {
    const { expected } = row('D020')
    sameLengths([allowances.sizing], [expected[0]])
    // A cove is sized too, so that no less is left for its finishing cut.
    const left = caliperSetting(inches(1), allowances) - inches(1)
    expect(left / MM_PER_INCH).toBeGreaterThanOrEqual(expected[2])
  })

  it('squares ends in that course’s steps', () => {
    const { expected } = row('D021')
    sameLengths([SQUARING.firstOutside, SQUARING.last, SQUARING.core], expected)
  })

  it('roughs and smooths in that course’s steps', () => {
    const { expected } = row('D022')
    sameLengths([ROUGHING_STEP, ...SMOOTHING_START], [expected.rough_step_in, ...expected.smooth_start_in])
  })

  it('strikes marks with brads as long as that course’s', () => {
    const { expected } = row('D024')
    sameLengths([BRADS], [expected])
  })

  it('keeps blank and sizing within what makers’ manuals leave', () => {
    const { expected } = row('D028')
    const over = allowances.rounding / MM_PER_INCH
    expect(over).toBeGreaterThanOrEqual(expected.blank_over_in[0])
    expect(over).toBeLessThanOrEqual(expected.blank_over_in[1])
    expect(allowances.sizing / MM_PER_INCH).toBeLessThanOrEqual(expected.sizing_over_in)
  })

  it('leaves at the ends what turners leave', () => {
    const [least, most] = row('D060').expected as [number, number]
    const both = (2 * allowances.endWaste + allowances.spur) / MM_PER_INCH
    expect(both).toBeGreaterThanOrEqual(least)
    expect(both).toBeLessThanOrEqual(most)
  })

  it('holds what shows to what turners hold by hand', () => {
    const job = readJob({
      name: 'Cylinder',
      units: 'in',
      species: 'maple-sugar',
      quantity: 1,
      profile: {
        stations: [
          { at: '0', diameter: '1 in' },
          { at: '4', diameter: '1 in' },
        ],
      },
    })
    near(job.tolerance.diameter / MM_PER_INCH, row('D062').expected.decorative, LAST_PLACE)
  })
})

describe('corners and grits', () => {
  it('marks the octagon where geometry puts it, which the rule with a foot rule nearly does', () => {
    const { inputs, expected, tolerance } = row('D029')
    near(octagonLine(1), expected.exact, tolerance)
    near(inputs.marks[0] / 12, expected.tip, tolerance)
    expect(Math.abs(octagonLine(1) - expected.tip)).toBeLessThan(0.002)
  })

  it('finds nothing wrong with the sequences in use, but with the step to avoid', () => {
    const { expected } = row('D057')
    expect(gritJumps(expected.a)).toEqual([])
    expect(gritJumps(expected.b)).toEqual([])
    expect(gritJumps(expected.avoid)).toEqual([expected.avoid])
    expect(gritJumps(defaultShop.grits)).toEqual([])
  })
})
