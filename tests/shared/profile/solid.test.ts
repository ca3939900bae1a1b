import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Profile } from '../../../shared/profile/profile.ts'
import { spansOf } from '../../../shared/profile/profile.ts'
import { diametersOf } from '../../../shared/profile/radius.ts'
import { solidOf } from '../../../shared/profile/solid.ts'
import { near } from '../../near.ts'
import { anyProfile, mirrored, oneSpan, profileOf, scaledBy, station } from './build.ts'
import { arcOutline, ellipseOutline, lineOutline, ogeeOutline } from './outlines.ts'
import { doubleExponential, type Outline, turnedAbout } from './quadrature.ts'

/** Relative error that the figures of a part are held to. */
const EXACT = { rel: 1e-9 }

/** The part's own figures against an independent quadrature of its outline, ends and all. */
function agrees(profile: Profile, outline: Outline, width: number): void {
  const { volume, centroid, lateral } = turnedAbout(outline, width)
  const solid = solidOf(profile)
  near(solid.volume, volume, EXACT, 'volume')
  near(solid.centroid, centroid, EXACT, 'centroid')
  near(solid.surfaceTurned, lateral, EXACT, 'lateral')
  const ends = Math.PI * (outline(0, 1).r ** 2 + outline(1, 0).r ** 2)
  near(solid.surface, lateral + ends, EXACT, 'surface')
}

describe('solids that have a closed form', () => {
  it('a cylinder', () => {
    const solid = solidOf(oneSpan('straight', 80, 30, 30))
    near(
      solid,
      {
        length: 80,
        maxDiameter: 30,
        minDiameter: 30,
        centroid: 40,
        volume: Math.PI * 225 * 80,
        surface: 2 * Math.PI * 15 * 80 + 2 * Math.PI * 225,
        surfaceTurned: 2 * Math.PI * 15 * 80,
      },
      { rel: 1e-14 },
    ) // prettier-ignore
    expect(solid.maxSide).toBeUndefined()
  })

  it('a frustum of a cone', () => {
    const [R, r, h] = [20, 8, 50]
    const solid = solidOf(oneSpan('straight', h, 2 * R, 2 * r))
    near(solid.volume, (Math.PI * h * (R * R + R * r + r * r)) / 3, { rel: 1e-14 })
    near(solid.surfaceTurned, Math.PI * (R + r) * Math.hypot(h, R - r), { rel: 1e-14 })
    near(solid.centroid, (h * (R * R + 2 * R * r + 3 * r * r)) / (4 * (R * R + R * r + r * r)), {
      rel: 1e-14,
    })
  })

  it('a sphere, as a half-round bead on nothing', () => {
    const solid = solidOf(oneSpan('bead', 50, 0, 0))
    near(
      solid,
      { maxDiameter: 50, volume: (4 / 3) * Math.PI * 25 ** 3, surface: 4 * Math.PI * 625, centroid: 25 },
      { rel: 1e-13 },
    )
  })

  it('half-round beads and coves, by the theorem of Pappus', () => {
    // a half disc of radius a has its centroid 4a/3π from its flat, a half circle 2a/π
    const [a, R] = [6, 20]
    const [halfDisc, halfCircle] = [(Math.PI * a * a) / 2, Math.PI * a]
    for (const [shape, sign] of [
      ['bead', 1],
      ['cove', -1],
    ] as const) {
      const solid = solidOf(oneSpan(shape, 2 * a, 2 * R, 2 * R))
      const added = halfDisc * 2 * Math.PI * (R + (sign * 4 * a) / (3 * Math.PI))
      near(solid.volume, Math.PI * R * R * 2 * a + sign * added, { rel: 1e-13 }, shape)
      near(
        solid.surfaceTurned,
        halfCircle * 2 * Math.PI * (R + (sign * 2 * a) / Math.PI),
        { rel: 1e-13 },
        shape,
      )
      near(sign === 1 ? solid.maxDiameter : solid.minDiameter, 2 * (R + sign * a), { rel: 1e-15 }, shape)
    }
  })

  it('quarter ellipses: an ovolo down to the axis is half an ellipsoid', () => {
    const [a, b] = [30, 18]
    near(solidOf(oneSpan('ovolo', a, 2 * b, 0)).volume, (2 / 3) * Math.PI * b * b * a, { rel: 1e-13 })
    near(solidOf(oneSpan('ovolo', a, 2 * b, 0)).centroid, (3 / 8) * a, { rel: 1e-13 })
    near(solidOf(oneSpan('ovolo', b, 2 * b, 0)).surfaceTurned, 2 * Math.PI * b * b, { rel: 1e-13 })
  })

  it('a cavetto, by the centroid of what a quarter disc leaves of its square', () => {
    // r = r1 + h(1 − √(1 − s²)): ∫ = r1² + 2·r1·h(1 − π/4) + h²(5/3 − π/2)
    const [w, r1, h] = [12, 10, 7]
    const mean = r1 * r1 + 2 * r1 * h * (1 - Math.PI / 4) + h * h * (5 / 3 - Math.PI / 2)
    near(solidOf(oneSpan('cavetto', w, 2 * (r1 + h), 2 * r1)).volume, Math.PI * w * mean, { rel: 1e-13 })
  })

  it('an ogee, by integrating its polynomial', () => {
    // ∫(3t²−2t³) = 1/2, ∫(3t²−2t³)² = 13/35
    const [w, r0, d] = [40, 9, 11]
    const volume = Math.PI * w * (r0 * r0 + r0 * d + (13 / 35) * d * d)
    near(solidOf(oneSpan('ogee', w, 2 * r0, 2 * (r0 + d))).volume, volume, { rel: 1e-14 })
  })

  it('a square, its ends and four faces', () => {
    const solid = solidOf(profileOf(station(0, undefined, 'square', { side: 40 }), station(100)))
    near(
      solid,
      { volume: 160_000, surface: 4 * 4000 + 2 * 1600, surfaceTurned: 0, centroid: 50 },
      { rel: 1e-14 },
    )
    near(solid, { maxDiameter: 40, minDiameter: 40, maxSide: 40 }, { exact: true })
  })
})

describe('every shape against an independent quadrature', () => {
  const sizes = [
    [20, 15, 15],
    [20, 12, 19],
    [20, 19, 12],
    [3, 20, 9],
    [160, 8, 25],
    [0.8, 10, 20],
  ] as const // prettier-ignore
  for (const [w, r0, r1] of sizes) {
    it(`${w} mm wide, ${2 * r0} to ${2 * r1} mm`, () => {
      const one = (shape: Parameters<typeof oneSpan>[0], more = {}) => oneSpan(shape, w, 2 * r0, 2 * r1, more)
      agrees(one('straight'), lineOutline(w, r0, r1), w)
      agrees(one('ogee'), ogeeOutline(w, r0, r1), w)
      for (const shape of ['ovolo', 'cavetto'] as const)
        if (r0 !== r1) agrees(one(shape), ellipseOutline(shape, w, r0, r1), w)
      for (const share of [1, 1 - 1e-8, 0.999, 0.5, 0.01, 1e-5]) {
        const s = Math.min(w / 2, 7) * share
        agrees(one('bead', { rise: s }), arcOutline(1, w, r0, r1, s), w)
        agrees(one('cove', { depth: s }), arcOutline(-1, w, r0, r1, s), w)
      }
    })
  }
})

describe('spans at the edge of what can be written', () => {
  it('a nanometre wide and 20 m from the foot come out, and quickly', () => {
    for (const shape of ['straight', 'bead', 'cove', 'ovolo', 'cavetto', 'ogee', 'curve'] as const) {
      const part = profileOf(
        station(0, 30),
        station(19_000, 30, shape),
        station(19_000.000001, 900),
        station(20_000, 900),
      )
      const plain = Math.PI * (15 ** 2 * 19_000 + 450 ** 2 * 1_000)
      near(solidOf(part).volume, plain, { rel: 1e-9 }, shape)
    }
  })

  it('a sliver as tall as a shoulder has the ring’s surface', () => {
    const ring = Math.PI * (450 ** 2 - 15 ** 2)
    near(solidOf(oneSpan('ogee', 1e-6, 30, 900)).surfaceTurned, ring, { rel: 1e-7 })
  })
})

describe('rounded shoulders', () => {
  /** The shoulder by polar integration of its sections, written down from the definition. */
  function shoulderByHand(side: number, a: number) {
    const h = side / 2
    const rho = (t: number, u: number) => h + h * (Math.SQRT2 - 1) * Math.sqrt(t * (1 + u))
    const slope = (t: number, u: number) => (h * (Math.SQRT2 - 1) * u) / Math.sqrt(t * (1 + u)) / a
    const flat = (r: number) => Math.sqrt(Math.max(0, r * r - h * h))
    const corner = (r: number) => Math.PI / 2 - 2 * Math.acos(Math.min(1, h / r))
    const area = (r: number) => 4 * h * flat(r) + 2 * r * r * corner(r)
    const of = (f: (r: number, slope: number) => number) =>
      a * doubleExponential((t, u) => f(rho(t, u), slope(t, u)))
    return {
      volume: of(area),
      lateral: of((r, m) => 8 * flat(r) + 4 * r * corner(r) * Math.hypot(1, m)),
      face: area(h),
    }
  }

  it('towards a turned span take volume and surface from the square', () => {
    const [side, d] = [57.15, 40]
    const a = (side * (Math.SQRT2 - 1)) / 2
    const by = shoulderByHand(side, a)
    const cylinder = { volume: (Math.PI * d * d * 50) / 4, lateral: Math.PI * d * 50 }
    const solid = solidOf(
      profileOf(station(0, d), station(50, d, 'square', { side, shoulder: 'rounded' }), station(150)),
    )
    near(solid.volume, cylinder.volume + by.volume + side * side * (100 - a), EXACT)
    const faces = side * side + by.face - (Math.PI * d * d) / 4 + (Math.PI * d * d) / 4
    near(solid.surface, cylinder.lateral + by.lateral + 4 * side * (100 - a) + faces, EXACT)
    near(solid.surfaceTurned, cylinder.lateral, EXACT)
  })

  it('of a length of its own, at both ends of the square', () => {
    const [side, a] = [40, 5]
    const by = shoulderByHand(side, a)
    const square = { side, shoulder: 'rounded' as const, shoulderLength: a }
    const solid = solidOf(
      profileOf(station(0, 20), station(10, 20, 'square', square), station(60, 20), station(70, 20)),
    )
    near(solid.volume, Math.PI * 100 * 20 + 2 * by.volume + side * side * 40, EXACT)
    near(solid.centroid, 35, EXACT)
  })

  it('meet in the middle where the square is too short for both', () => {
    const square = { side: 40, shoulder: 'rounded' as const }
    const short = solidOf(
      profileOf(station(0, 20), station(10, 20, 'square', square), station(16, 20), station(26, 20)),
    )
    const whole = shoulderByHand(40, 20 * (Math.SQRT2 - 1))
    expect(short.volume).toBeLessThan(2 * Math.PI * 100 * 10 + 1600 * 6)
    expect(short.volume).toBeGreaterThan(
      2 * Math.PI * 100 * 10 + (6 * whole.volume) / (20 * (Math.SQRT2 - 1)) / 2,
    )
    near(short.centroid, 13, EXACT)
  })

  it('are plain at an end of the part', () => {
    const square = (shoulder: 'square' | 'rounded') =>
      solidOf(profileOf(station(0, undefined, 'square', { side: 40, shoulder }), station(50)))
    expect(square('rounded')).toEqual(square('square'))
  })
})

describe('faces across the axis', () => {
  it('a step adds its ring', () => {
    const solid = solidOf(profileOf(station(0, 20), station(30, 20), station(30, 36), station(60, 36)))
    const lateral = Math.PI * 20 * 30 + Math.PI * 36 * 30
    near(solid.surface, lateral + Math.PI * (100 + 324) + Math.PI * (324 - 100), { rel: 1e-14 })
  })

  it('a shoulder adds what of the square stands out beyond the round, and of the round beyond a smaller square', () => {
    const shouldered = (side: number, more: Parameters<typeof profileOf> = []) =>
      solidOf(profileOf(station(0, 40), station(10, 40, 'square', { side }), station(30), ...more))
    const lateral = (side: number) => Math.PI * 40 * 10 + 4 * side * 20
    near(shouldered(50).surface, lateral(50) + Math.PI * 400 + 2500 + (2500 - Math.PI * 400), { rel: 1e-14 })
    // side 34: half 17 < 20 < 17√2, so flats are sunk below the round and corners stand out of it
    const common = 4 * 17 * Math.sqrt(400 - 289) + 2 * 400 * (Math.PI / 2 - 2 * Math.acos(17 / 20))
    near(shouldered(34).surface, lateral(34) + Math.PI * 400 + 1156 + Math.PI * 400 + 1156 - 2 * common, {
      rel: 1e-12,
    })
  })

  it('two squares of different size add the difference of their ends', () => {
    const solid = solidOf(
      profileOf(
        station(0, undefined, 'square', { side: 30 }),
        station(20, undefined, 'square', { side: 50 }),
        station(50),
      ),
    )
    near(solid.surface, 4 * 30 * 20 + 4 * 50 * 30 + 900 + 2500 + (2500 - 900), { rel: 1e-14 })
  })
})

describe('extreme diameters', () => {
  it('count the crest of a bead and the root of a cove between larger and smaller ends', () => {
    // on a line of slope m the arc turns where its own slope is −m: u = mR/√(1+m²)
    const [w, r0, r1, s] = [20, 10, 14, 6]
    const R = (w * w) / (8 * s) + s / 2
    const m = (r1 - r0) / w
    const u = (m * R) / Math.hypot(1, m)
    const line = (r0 + r1) / 2 + m * u
    near(
      solidOf(oneSpan('bead', w, 2 * r0, 2 * r1, { rise: s })).maxDiameter,
      2 * (line + Math.sqrt(R * R - u * u) - (R - s)),
      { rel: 1e-14 },
    )
    const cove = (r0 + r1) / 2 - m * u - (Math.sqrt(R * R - u * u) - (R - s))
    near(solidOf(oneSpan('cove', w, 2 * r0, 2 * r1, { depth: s })).minDiameter, 2 * cove, { rel: 1e-14 })
  })

  it('leave squares out where anything is turned', () => {
    const solid = solidOf(
      profileOf(station(0, 30), station(10, 24, 'square', { side: 50 }), station(40, 44), station(60, 20)),
    )
    expect(solid).toMatchObject({ maxDiameter: 44, minDiameter: 20, maxSide: 50 })
  })
})

describe('any sound profile', () => {
  it('has a volume between what every span holds inside and what it fits into', () => {
    fc.assert(
      fc.property(anyProfile, (profile) => {
        const spans = spansOf(profile)
        const area = (d: number, square: boolean) => (square ? d * d : (Math.PI * d * d) / 4)
        const inside = spans.reduce((sum, s) => sum + area(diametersOf(s).least, false) * (s.to - s.from), 0)
        const outside = spans.reduce(
          (sum, s) => sum + area(diametersOf(s).greatest, s.shape === 'square') * (s.to - s.from),
          0,
        )
        const { volume } = solidOf(profile)
        expect(volume).toBeGreaterThanOrEqual(inside * (1 - 1e-12))
        expect(volume).toBeLessThanOrEqual(outside * (1 + 1e-12))
      }),
    )
  })

  it('has its centroid inside, and mirrored when it is read from the other end, all else alike', () => {
    fc.assert(
      fc.property(anyProfile, (profile) => {
        const [solid, back] = [solidOf(profile), solidOf(mirrored(profile))]
        expect(solid.centroid).toBeGreaterThan(0)
        expect(solid.centroid).toBeLessThan(solid.length)
        near(back.centroid, solid.length - solid.centroid, { rel: 1e-9 })
        for (const key of [
          'length',
          'volume',
          'surface',
          'surfaceTurned',
          'maxDiameter',
          'minDiameter',
        ] as const) {
          near(back[key], solid[key], { rel: 1e-9 }, key)
        }
      }),
    )
  })

  it('grows as the square and the cube of its scale', () => {
    fc.assert(
      fc.property(anyProfile, fc.double({ min: 0.1, max: 10, noNaN: true }), (profile, k) => {
        const [solid, scaled] = [solidOf(profile), solidOf(scaledBy(k, profile))]
        near(scaled.centroid, k * solid.centroid, { rel: 1e-9 })
        near(scaled.surface, k ** 2 * solid.surface, { rel: 1e-9 })
        near(scaled.volume, k ** 3 * solid.volume, { rel: 1e-9 })
      }),
    )
  })
})
