import { describe, expect, it } from 'vitest'
import type { Profile } from '../../../shared/profile/profile.ts'
import type { RouteInput } from '../../../shared/route/input.ts'
import type { OperationDraft } from '../../../shared/route/operation.ts'
import { routeFor } from '../../../shared/route/route.ts'
import { inches } from '../../../shared/units/length.ts'
import { benchTools, inchProfile, leg, routeInput, stepLathe } from './route-inputs.ts'

const operations = (profile: Profile, more: Partial<RouteInput> = {}): OperationDraft[] =>
  routeFor(routeInput(profile, more)).operations
const keys = (list: OperationDraft[]): string[] => list.map((operation) => operation.key)
const kinds = (list: OperationDraft[]): string[] => [...new Set(list.map((operation) => operation.kind))]
const named = (list: OperationDraft[], key: string): OperationDraft => {
  const found = list.find((operation) => operation.key === key)
  if (!found) throw new Error(`no ${key} in ${keys(list)}`)
  return found
}
/** Whether the keys stand in that order. */
const inOrder = (list: OperationDraft[], ...wanted: string[]): void => {
  const places = wanted.map((key) => keys(list).indexOf(key))
  expect(places, `${wanted} in ${keys(list)}`).toEqual([...places].sort((a, b) => a - b))
  expect(Math.min(...places), `${wanted} in ${keys(list)}`).toBeGreaterThanOrEqual(0)
}

const cylinder = (): Profile =>
  inchProfile([
    [0, 1],
    [6, 1],
  ])

/** Forty stations: beads, coves, fillets and tapers between two squares. */
const newel = (): Profile => {
  const side = inches(2)
  const middle = Array.from({ length: 37 }, (_, i): [number, number, 'bead' | 'cove' | 'straight'] => [
    4 + i / 2,
    1.25 + (i % 4) / 8,
    i % 3 === 0 ? 'bead' : i % 3 === 1 ? 'straight' : 'cove',
  ])
  return inchProfile([
    [0, undefined, 'square', { side }],
    ...middle.map(([at, d, then]): [number, number, typeof then, object] => [
      at,
      d,
      then,
      { rise: 3, depth: 2 },
    ]),
    [22.5, 1.5, 'square', { side }],
    [27, undefined],
  ])
}

describe('what there is to do', () => {
  it('is little for a cylinder, and nothing that only squares need', () => {
    expect(keys(operations(cylinder(), { checks: [] }))).toEqual([
      'rip',
      'crosscut',
      'centres',
      'mount',
      'rough-s0',
      'label',
      'story-stick',
      'size-s0',
      'straight-s0',
      'sand',
      'end-foot',
      'end-top',
      'finish-on-lathe',
      'nub',
      'pack',
    ])
  })

  it('is another list for forty stations, with each of its features and no other', () => {
    const list = operations(newel())
    const forming = list.filter((operation) => operation.spans)
    expect(forming.flatMap((operation) => operation.spans)).toHaveLength(37)
    expect(forming.length).toBeGreaterThan(30)
    for (const kind of ['plane', 'square-ends', 'strike-shoulders', 'shoulder', 'bead', 'cove', 'taper'])
      expect(kinds(list)).toContain(kind)
    for (const kind of ['nub', 'end', 'ogee', 'curve', 'tenon']) expect(kinds(list)).not.toContain(kind)
    expect(list.length).toBeGreaterThan(2 * operations(cylinder()).length)
  })

  it('names each cut by its place', () => {
    const list = operations(leg())
    expect(named(list, 'bead-s1').name).toBe('Cut the foot bead')
    expect(named(list, 'taper-s2').name).toBe('Cut the taper at 1-3/4 in')
    expect(named(list, 'bead-s1').where).toEqual([inches(1.25), inches(1.75)])
    expect(named(operations(leg(), { units: 'mm' }), 'taper-s2').name).toBe('Cut the taper at 44.5 mm')
  })

  it('gives every operation one reason, and a caution to what is dangerous', () => {
    const list = operations(newel(), { finish: 'oil' })
    for (const { key, why } of list) expect(why, key).toMatch(/^\S.{20,}[^.]\.$/)
    expect(named(list, 'mount').caution).toContain('No gloves')
    expect(named(list, 'mount').caution).toContain('stand aside')
    expect(named(list, 'sand').caution).toContain('dust')
    expect(named(list, 'finish-on-lathe').caution).toContain('ignite')
    for (const { caution } of list.filter((o) => o.kind === 'size'))
      expect(caution).toContain('spring calipers')
  })
})

describe('the order', () => {
  it('cuts a shoulder in before the round beside it is begun', () => {
    inOrder(operations(leg()), 'strike-shoulders', 'mount', 'shoulder-s3', 'rough-s0', 'story-stick')
  })

  it('cuts mortises in the square, and ends to length before them', () => {
    const joints: RouteInput['joints'] = [
      { kind: 'mortise', at: inches(14), size: [10, 60], depth: 25, stage: 'square' },
      { kind: 'mortise', at: inches(14), face: 'B', size: [10, 60], depth: 25, stage: 'square' },
      { kind: 'hole', at: inches(15), size: [8], depth: 20, stage: 'square' },
    ]
    const list = operations(leg(), { joints })
    inOrder(list, 'square-ends', 'mortise-j0', 'bore-j2', 'strike-shoulders', 'mount')
    expect(named(list, 'mortise-j0').work.count).toBe(2)
    expect(named(list, 'mortise-j0').work.removed).toBeCloseTo(2 * 10 * 60 * 25, 6)
    expect(named(list, 'bore-j2').work.removed).toBeCloseTo(Math.PI * 16 * 20, 6)
  })

  it('does not wait for the lathe to bore a part that is turned all over', () => {
    const joints: RouteInput['joints'] = [
      { kind: 'hole', at: inches(3), size: [8], depth: 10, stage: 'square' },
    ]
    inOrder(operations(cylinder(), { joints }), 'crosscut', 'bore-j0', 'mount')
  })

  it('cuts joints in the round after sanding and before anything is parted', () => {
    const joints: RouteInput['joints'] = [
      { kind: 'mortise', at: inches(3), angle: 30, size: [8, 20], depth: 10, stage: 'turned' },
    ]
    inOrder(operations(cylinder(), { joints, checks: [] }), 'sand', 'joint-round-j0', 'nub')
  })

  it('sizes and straightens before the taper beside it', () => {
    const list = operations(
      inchProfile([
        [0, 1],
        [2, 1],
        [8, 2],
        [10, 2],
      ]),
    )
    inOrder(list, 'straight-s0', 'taper-s1')
    inOrder(list, 'straight-s2', 'taper-s1')
  })

  it('goes from thick to thin among features of a kind', () => {
    const rise = { rise: 2 }
    const list = operations(
      inchProfile([
        [0, 1, 'bead', rise],
        [0.5, 1],
        [1, 1],
        [1, 2, 'bead', rise],
        [1.5, 2],
        [2, 1.5, 'bead', rise],
        [2.5, 1.5],
      ]),
    )
    inOrder(list, 'bead-s3', 'bead-s5', 'bead-s0')
  })

  it('roughs from the tail end', () => {
    const list = operations(
      inchProfile([
        [0, 1],
        [4, 1, 'square', { side: inches(2) }],
        [6, 1],
        [9, 1, 'square', { side: inches(2) }],
        [12, undefined],
      ]),
    )
    // The top is square and so driven: the foot runs at the tailstock.
    inOrder(list, 'shoulder-s1', 'rough-s0', 'rough-s2')
    inOrder(list, 'shoulder-s3', 'rough-s2')
  })

  it('checks a set before anything is parted, and loose parts not at all', () => {
    const checks: RouteInput['checks'] = [{ key: 's0', at: 0, kind: 'diameter', target: 25.4 }]
    inOrder(operations(cylinder(), { checks }), 'sand', 'check-set', 'nub')
    expect(keys(operations(cylinder(), { checks, match: false }))).not.toContain('check-set')
    expect(keys(operations(cylinder(), { checks, quantity: 1 }))).not.toContain('check-set')
  })

  it('lets nothing stand before what it waits for', () => {
    const list = operations(newel())
    list.forEach(({ after }, i) => {
      for (const key of after) expect(keys(list).indexOf(key)).toBeLessThan(i)
    })
  })
})

describe('slender work', () => {
  const baluster = (): Profile =>
    inchProfile([
      [0, 0.75],
      [5, 0.75, 'bead', { rise: 3 }],
      [5.5, 0.75],
      [17, 1.25],
      [17, 1],
      [30, 1],
      [31, 1.25],
    ])
  const slender = (rest: 'advised' | 'needed') =>
    ({ whip: { at: inches(16), criticalRpm: 2400, rest } }) as const

  it('turns a journal for the steady at the limberest point before anything is thinned', () => {
    const list = operations(baluster(), slender('needed'))
    const journal = named(list, 'journal')
    expect(journal.where![0]).toBeLessThan(inches(16))
    expect(journal.where![1]).toBeGreaterThan(inches(16))
    inOrder(list, 'rough-s0', 'journal', 'story-stick', 'straight-s0')
    expect(journal.caution).toContain('steady rest')
  })

  it('is finished stretch by stretch from the tail to the driven end, sanding and all', () => {
    const list = operations(baluster(), slender('advised'))
    // Both ends are turned and the top is thicker, so the foot runs at the tail; the rest is 12 in long.
    inOrder(
      list,
      'straight-s0',
      'bead-s1',
      'taper-s2',
      'sand-p1',
      'straight-s4',
      'sand-p2',
      'taper-s5',
      'sand-p3',
    )
    const positions = list.filter((o) => o.spans || o.kind === 'sand').map((o) => o.stretch!)
    expect(positions).toEqual([...positions].sort((a, b) => a - b))
  })

  it('is left alone where no rest is called for', () => {
    const list = operations(baluster())
    expect(keys(list)).toContain('sand')
    expect(keys(list)).not.toContain('journal')
  })
})

describe('what holds it', () => {
  it('leaves a part between centres on nubs that are sawn off by hand', () => {
    const list = operations(cylinder())
    expect(named(list, 'nub').work.count).toBe(2)
    expect(named(list, 'end-foot').name).toContain('3/8 in nub')
    expect(keys(list)).not.toContain('part')
  })

  it('leaves less of a nub on a slight end', () => {
    const list = operations(
      inchProfile([
        [0, 0.5],
        [6, 0.5],
      ]),
    )
    expect(named(list, 'end-foot').name).toContain('1/4 in nub')
  })

  it('parts off what a chuck holds and faces it in a jam chuck', () => {
    const list = operations(cylinder(), { mount: 'chuck' })
    inOrder(list, 'end-foot', 'part', 'jam-face', 'pack')
    expect(keys(list)).not.toContain('nub')
    expect(named(list, 'jam-face').pass).toBe(2)
  })

  it('counts all parts of a stick', () => {
    const one = routeInput(cylinder(), { mount: 'chuck' })
    const between = 2 * 6.35
    const stick: RouteInput = {
      ...one,
      blank: {
        ...one.blank,
        stock: { perBlank: 3, sticks: 3 },
        length: one.blank.length + 2 * inches(6) + between,
        lengthParts: { ...one.blank.lengthParts, parts: 3 * inches(6), between },
      },
    }
    const [single, several] = [routeFor(one).operations, routeFor(stick).operations]
    expect(named(several, 'straight-s0').work.length).toBeCloseTo(3 * inches(6), 9)
    expect(named(several, 'straight-s0').work.removed).toBeCloseTo(
      3 * named(single, 'straight-s0').work.removed,
      6,
    )
    expect(named(several, 'part').name).toContain('3')
    expect(named(several, 'part').work.count).toBe(3)
  })

  it('has no operation on a lathe for a part that is square all over', () => {
    const list = operations(
      inchProfile([
        [0, undefined, 'square', { side: inches(2) }],
        [9, undefined],
      ]),
    )
    expect(list.every((operation) => operation.rpm === undefined && operation.pass === 0)).toBe(true)
    expect(keys(list)).not.toContain('mount')
  })
})

describe('the wood', () => {
  it('too wet to finish is roughed over size, dried and trued in a second mounting', () => {
    const { operations: list, passes } = routeFor(routeInput(cylinder(), { moisture: 20 }))
    expect(passes.chosen).toBe('several')
    inOrder(list, 'rough-s0', 'dry', 'remount', 'true-up-s0', 'story-stick', 'straight-s0')
    expect(named(list, 'rough-s0').pass).toBe(1)
    expect(named(list, 'straight-s0').pass).toBe(2)
  })

  it('is finished at once while it is within two per cent of its use', () => {
    expect(keys(operations(cylinder(), { moisture: 10 }))).not.toContain('dry')
    expect(keys(operations(cylinder(), { moisture: 10.1 }))).toContain('dry')
  })

  it('wet and slender stays square until it is dry', () => {
    const { operations: list, passes } = routeFor(
      routeInput(cylinder(), { moisture: 20, whip: { at: inches(3), criticalRpm: 3000, rest: 'advised' } }),
    )
    expect(passes.chosen).toBe('one')
    expect(keys(list)).not.toContain('dry')
    expect(named(list, 'rest-strips').name).toContain('Dry')
  })

  it('in layers or as a pair is planed, glued and run as glued up', () => {
    const layered = routeInput(
      inchProfile([
        [0, 3],
        [6, 3],
      ]),
    )
    const list = routeFor({ ...layered, blank: { ...layered.blank, layers: 3 } }).operations
    inOrder(list, 'rip', 'rest-strips', 'plane', 'glue', 'crosscut')
    expect(named(list, 'glue').caution).toContain('24 h')
    expect(named(list, 'straight-s0').ceilingBy).toContain('glued up')
    const pair = operations(
      inchProfile(
        [
          [0, 1],
          [6, 1],
        ],
        true,
      ),
    )
    inOrder(pair, 'glue', 'straight-s0', 'nub', 'split', 'pack')
  })

  it('is crosscut last of the machine work, with a caution where it is short', () => {
    const short = operations(
      inchProfile([
        [0, 1, 'straight'],
        [3, 1, 'square', { side: inches(2) }],
        [6, undefined],
      ]),
    )
    inOrder(short, 'plane', 'crosscut')
    expect(named(short, 'crosscut').caution).toContain('Too short')
    expect(named(operations(leg()), 'crosscut').caution).toBeUndefined()
  })

  it('in big squares loses its corners at the saw first', () => {
    const list = operations(
      inchProfile([
        [0, 5],
        [6, 5],
      ]),
    )
    inOrder(list, 'crosscut', 'corners', 'mount', 'rough-s0')
    expect(keys(operations(cylinder()))).not.toContain('corners')
  })
})

describe('speeds along the route', () => {
  it('start each mounting at the slowest and rise as it comes round', () => {
    const list = operations(leg())
    expect(named(list, 'mount').rpm).toBe(400)
    expect(named(list, 'rough-s0').rpm).toBe(600)
    expect(named(list, 'taper-s2').rpm!).toBeGreaterThan(600)
    expect(named(list, 'sand').rpm!).toBeLessThan(named(list, 'taper-s2').rpm!)
  })

  it('fall with what is left square: its corners still swing', () => {
    const list = operations(leg())
    // 6000 over the diagonal of 2-1/4 in.
    expect(named(list, 'taper-s2').rpmCeiling).toBeCloseTo(1885.62, 1)
  })

  it('go by the blank while it is square, and by the part once it is thinned', () => {
    const more = { whip: { at: 100, criticalRpm: 1000, rest: 'none' }, blankCriticalRpm: 2000 } as const
    const list = operations(cylinder(), more)
    expect(named(list, 'rough-s0').rpmCeiling).toBe(1000)
    expect(named(list, 'straight-s0').rpmCeiling).toBe(500)
    expect(named(list, 'sand').rpmCeiling).toBe(500)
  })

  it('are absent without a lathe, with a word', () => {
    const rough = named(operations(cylinder(), { lathe: undefined }), 'rough-s0')
    expect(rough.rpm).toBeUndefined()
    expect(rough.rpmCeiling).toBeGreaterThan(0)
    expect(rough.caution).toContain('no lathe')
  })

  it('are absent away from the lathe', () => {
    for (const key of ['rip', 'crosscut', 'label', 'nub', 'pack'])
      expect(named(operations(cylinder()), key).rpmCeiling).toBeUndefined()
  })
})

describe('sizing cuts', () => {
  const checks: RouteInput['checks'] = [
    { key: 'knuckle', name: 'knuckle', at: inches(1.75), kind: 'diameter', target: inches(1.25) },
    { key: 's3', at: inches(14), kind: 'side', target: inches(2.25) },
  ]

  it('are set over by what later stages take', () => {
    const size = named(operations(leg(), { checks }), 'size-knuckle')
    // 1/16 in for the finishing cut and 1/64 in for sanding.
    expect(size.caliper).toBeCloseTo(inches(1.25 + 5 / 64), 9)
    expect(size).toMatchObject({ caliperStation: 'knuckle', name: 'Size at the knuckle to 1-21/64 in' })
    const film = named(operations(leg(), { checks, finish: 'film' }), 'size-knuckle')
    expect(film.caliper).toBeCloseTo(inches(1.25 + 5 / 64) - 0.1, 9)
  })

  it('leave a tenon no wood for sanding', () => {
    const tenoned = inchProfile([
      [0, 0.75, 'straight', { tenon: true }],
      [1, 0.75],
      [1, 1.5],
      [9, 1.5],
    ])
    expect(named(operations(tenoned), 'size-s0').caliper).toBeCloseTo(inches(0.75 + 1 / 16), 9)
  })

  it('are made where the caliper is set to that diameter anyway, and never on a square', () => {
    const sized = operations(leg(), { checks }).filter((operation) => operation.kind === 'size')
    expect(keys(sized).sort()).toEqual(['size-knuckle', 'size-s1'])
    expect(new Set(sized.map((operation) => operation.caliper)).size).toBe(1)
  })

  it('keep equal settings together, from thick to thin', () => {
    const more = [0.75, 2.5, 1.5, 2.5, 0.75].map((d, i) => ({
      key: `k${i}`,
      at: inches(i + 0.5),
      kind: 'diameter' as const,
      target: inches(d),
    }))
    const profile = inchProfile([
      [0, 0.75],
      [1, 0.75],
      [1, 2.5],
      [2, 2.5],
      [2, 1.5],
      [3, 1.5],
      [3, 2.5],
      [4, 2.5],
      [4, 0.75],
      [5, 0.75],
    ])
    const { operations: list, places } = routeFor(routeInput(profile, { checks: more }))
    const calipers = list.filter((o) => o.kind === 'size').map((o) => o.caliper!)
    expect(calipers).toEqual([...calipers].sort((a, b) => b - a))
    expect(places.map((place) => place.diameter)).toEqual(calipers)
  })

  it('make at least one in every turned stretch', () => {
    const sized = operations(newel(), { checks: [] }).filter((operation) => operation.kind === 'size')
    expect(sized.length).toBeGreaterThan(0)
  })
})

describe('the rest', () => {
  it('stands at as many positions as its length needs, counted from the tail', () => {
    const list = operations(leg(), { lathe: { ...stepLathe, restLength: inches(6) } })
    // Bead in the first 6 in from the foot, the middle of the long taper at 6-7/8 in.
    expect(named(list, 'bead-s1').restPosition).toBe(1)
    expect(named(list, 'taper-s2').restPosition).toBe(2)
    expect(named(list, 'shoulder-s3').restPosition).toBe(2)
  })
})

describe('finish', () => {
  it('is put on where it turns, and by hand on what is square', () => {
    expect(kinds(operations(leg(), { finish: 'wax' }))).toEqual(
      expect.arrayContaining(['finish-on-lathe', 'finish']),
    )
    expect(kinds(operations(cylinder(), { finish: 'wax' }))).not.toContain('finish')
    expect(kinds(operations(cylinder(), { finish: 'film' }))).not.toContain('finish-on-lathe')
    expect(kinds(operations(leg(), { finish: 'none' })).filter((kind) => kind.startsWith('finish'))).toEqual(
      [],
    )
  })

  it('and sanding leave tenons bare', () => {
    const tenoned = operations(
      inchProfile([
        [0, 0.75, 'straight', { tenon: true }],
        [1, 0.75],
        [1, 1.5],
        [9, 1.5],
      ]),
    )
    expect(named(tenoned, 'sand').where).toEqual([inches(1), inches(9)])
    expect(named(tenoned, 'sand').work.surface).toBeCloseTo(Math.PI * inches(1.5) * inches(8), 3)
    expect(named(tenoned, 'finish-on-lathe').work.surface).toBeCloseTo(Math.PI * inches(1.5) * inches(8), 3)
  })
})

describe('tools', () => {
  it('come from the shop, and where it lacks one the usual tool with a caution', () => {
    expect(named(operations(cylinder()), 'rough-s0').tool).toBe('roughing gouge')
    const bare = named(
      operations(cylinder(), { tools: benchTools.filter((t) => t.kind === 'skew') }),
      'rough-s0',
    )
    expect(bare.tool).toContain('roughing gouge')
    expect(bare.caution).toContain('no such tool')
  })
})
