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

  it('checks a set while wood can still come off: before any finish and before anything is parted', () => {
    const checks: RouteInput['checks'] = [{ key: 's0', at: 0, kind: 'diameter', target: 25.4 }]
    for (const finish of ['oil', 'wax', 'polish'] as const)
      inOrder(
        operations(cylinder(), { checks, finish }),
        'sand',
        'end-top',
        'check-set',
        'return',
        'finish-on-lathe',
        'nub',
      )
    inOrder(operations(cylinder(), { checks, finish: 'film' }), 'check-set', 'nub', 'finish')
    inOrder(operations(leg(), { checks, finish: 'wax' }), 'check-set', 'finish-on-lathe', 'finish')
  })

  it('puts a piece back on the lathe after the check only for what is still to be done there', () => {
    const checks: RouteInput['checks'] = [{ key: 's0', at: 0, kind: 'diameter', target: 25.4 }]
    const oiled = operations(cylinder(), { checks })
    expect(named(oiled, 'check-set').pass).toBe(1)
    expect(named(oiled, 'return')).toMatchObject({ stage: 'set-up', pass: 2, rpm: 400 })
    expect(named(oiled, 'finish-on-lathe').pass).toBe(2)
    expect(keys(operations(cylinder(), { checks, finish: 'none' }))).not.toContain('return')
    expect(keys(operations(cylinder(), { checks, match: false }))).not.toContain('return')
    inOrder(operations(cylinder(), { checks, finish: 'none', mount: 'chuck' }), 'check-set', 'return', 'part')
  })

  it('checks no loose parts', () => {
    const checks: RouteInput['checks'] = [{ key: 's0', at: 0, kind: 'diameter', target: 25.4 }]
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
    // Both ends are turned and the top is thicker, so the foot runs at the tail. The rest is 12 in long: the taper from
    // 5-1/2 in to 17 in is its second position, the straight from 17 in to 30 in is longer than the rest.
    inOrder(
      list,
      'straight-s0',
      'bead-s1',
      'sand-p1',
      'taper-s2',
      'sand-p2',
      'straight-s4',
      'taper-s5',
      'sand-p3',
    )
    const positions = list.filter((o) => o.spans || o.kind === 'sand').map((o) => o.stretch!)
    expect(positions).toEqual([...positions].sort((a, b) => a - b))
  })

  it('leaves the journal until last: the rest comes away, then its stretch is cut and blended in', () => {
    const list = operations(baluster(), slender('needed'))
    const [journal, blend] = [named(list, 'journal'), named(list, 'blend')]
    expect(blend.where).toEqual(journal.where)
    expect(blend.name).toContain('steady rest away')
    expect(blend.work.length).toBeCloseTo(journal.work.length, 9)
    inOrder(list, 'journal', 'taper-s2', 'straight-s4', 'taper-s5', 'sand-p3', 'blend', 'end-foot')
    // Two inches about 16 in: on the long taper, up to the step at 17 in and no farther.
    for (const key of ['taper-s2', 'sand-p2']) expect(named(list, key).caution, key).toContain('until last')
    for (const key of ['bead-s1', 'straight-s4', 'sand-p1'])
      expect(named(list, key).caution ?? '', key).not.toContain('until last')
  })

  it('is sized in the journal beside the rollers', () => {
    const at = (x: number): RouteInput['checks'][number] => ({
      key: `k${x}`,
      at: inches(x),
      kind: 'diameter',
      target: inches(0.75 + (0.5 * (x - 5.5)) / 11.5),
    })
    const list = operations(baluster(), { ...slender('needed'), checks: [at(10), at(16)] })
    expect(named(list, 'size-k16').caution).toContain('beside the groove')
    expect(named(list, 'size-k10').caution).not.toContain('groove')
  })

  it('has its journal where the stick gives most, on the part that lies there', () => {
    const input = routeInput(baluster(), {
      mount: 'chuck',
      whip: { at: inches(31 + 0.25 + 16), criticalRpm: 2400, rest: 'needed' },
    })
    const blank = { ...input.blank, stock: { perBlank: 3, sticks: 3 } }
    const stick = { ...blank, lengthParts: { ...blank.lengthParts, between: 2 * inches(0.25) } }
    const [from, to] = named(routeFor({ ...input, blank: stick }).operations, 'journal').where!
    expect((from + to) / 2).toBeCloseTo(inches(16), 6)
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
    inOrder(list, 'end-foot', 'part', 'jam-face-top', 'pack')
    expect(keys(list)).not.toContain('nub')
    expect(named(list, 'jam-face-top').pass).toBe(2)
  })

  it('coats a face bared by the parting as the rest was coated on the lathe, with the caution of it', () => {
    const face = (finish: RouteInput['finish']) =>
      named(operations(cylinder(), { mount: 'chuck', finish }), 'jam-face-top')
    expect(face('oil').name).toBe('Face the top in a jam chuck, sand and oil it')
    expect(face('oil').caution).toContain('Oily rags ignite')
    expect(face('wax').name).toBe('Face the top in a jam chuck, sand and wax it')
    expect(face('wax').caution).not.toContain('Oily rags')
    // A film is sprayed or brushed on after all turning.
    for (const finish of ['none', 'film'] as const)
      expect(face(finish).name).toBe('Face the top in a jam chuck and sand it')
  })

  it('says no length in inches in the caution of a corner, beside lengths in any units', () => {
    expect(named(operations(cylinder()), 'rough-s0').caution).not.toMatch(/\d (in|mm)\b/)
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
    // All three are parted at the driven end; parting bares the tail end of all but the first, too.
    const driven = stick.blank.lengthParts.drivenEnd
    const tail = driven === 'foot' ? 'top' : 'foot'
    expect(named(several, `jam-face-${driven}`).work.count).toBe(3)
    expect(named(several, `jam-face-${tail}`).work.count).toBe(2)
    expect(named(several, `jam-face-${tail}`).name).toContain('other 2')
    expect(keys(single)).toContain(`jam-face-${driven}`)
    expect(keys(single)).not.toContain(`jam-face-${tail}`)
  })

  it('pares what was parted in the middle of a stick between centres, and saws the last of it by hand', () => {
    const one = routeInput(cylinder())
    const blank = { ...one.blank, stock: { perBlank: 4, sticks: 3 } }
    const list = routeFor({ ...one, blank }).operations
    expect(named(list, 'part').name).toContain('3/16 in core')
    // Three cuts leave six raw faces; the two ends of the stick are pared with the nubs.
    expect(named(list, 'pare-ends').work.count).toBe(6)
    expect(named(list, 'pare-ends').work.surface).toBeCloseTo((6 * Math.PI * inches(1) ** 2) / 4, 6)
    inOrder(list, 'part', 'pare-ends', 'pack')
    expect(keys(operations(cylinder()))).not.toContain('pare-ends')
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
    inOrder(list, 'rip', 'rest-strips', 'plane', 'crosscut', 'glue', 'plane-blank', 'mount')
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

  it('in layers is faced layer by layer and planed to its square only once it is glued', () => {
    const long = routeInput(leg())
    const glued = { ...long, blank: { ...long.blank, layers: 3 } }
    const list = routeFor(glued).operations
    inOrder(list, 'rip', 'rest-strips', 'crosscut', 'face-layers', 'glue', 'plane-blank', 'square-ends')
    expect(keys(list)).not.toContain('plane')
    expect(named(list, 'crosscut').name).toContain('layers')
    expect(named(list, 'crosscut').work.count).toBe(3)
    // A third of 2-1/4 in.
    expect(named(list, 'face-layers').name).toContain('3/4 in')
    expect(named(list, 'plane-blank').name).toContain('2-1/4 in square')
    // Too short for the machines: the strips are faced long, the glued square is brought down by hand.
    const short = routeInput(
      inchProfile([
        [0, 1],
        [3, 1, 'square', { side: inches(2) }],
        [6, undefined],
      ]),
    )
    const hand = routeFor({ ...short, blank: { ...short.blank, layers: 3 } }).operations
    inOrder(hand, 'rest-strips', 'plane', 'crosscut', 'glue', 'plane-blank')
    expect(keys(hand)).not.toContain('face-layers')
    expect(named(hand, 'plane').name).not.toContain('square')
    expect(named(hand, 'plane-blank').tool).toContain('hand plane')
  })

  it('with a glue line through its centres is driven so that nothing wedges it open', () => {
    const pair = inchProfile(
      [
        [0, 1],
        [6, 1],
      ],
      true,
    )
    const spur = operations(pair)
    for (const key of ['glue', 'centres', 'mount']) {
      expect(named(spur, key).caution, key).toContain('across the glue line')
      expect(named(spur, key).caution, key).not.toMatch(/never with a spur/)
    }
    const cup = operations(pair, { mount: 'cup' })
    for (const key of ['glue', 'mount']) expect(named(cup, key).caution).not.toContain('points')
    const layered = routeInput(cylinder())
    const odd = routeFor({ ...layered, blank: { ...layered.blank, layers: 3 } }).operations
    expect(named(odd, 'mount').caution).not.toContain('across the glue line')
    const even = routeFor({ ...layered, blank: { ...layered.blank, layers: 2 } }).operations
    expect(named(even, 'mount').caution).toContain('across the glue line')
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

  it('go by the diagonal of the blank at every stage of what is glued up, round or not', () => {
    const pair = routeInput(
      inchProfile(
        [
          [0, 2],
          [12, 2],
        ],
        true,
      ),
    )
    const spun = routeFor(pair).operations.filter((o) => o.rpmCeiling !== undefined)
    // 2 in and 1/8 in for rounding: 2-1/8 in square, 3.005 in across the corners; 6000 over that.
    expect(pair.blank.diagonal).toBeCloseTo(inches(2.125) * Math.SQRT2, 9)
    for (const { key, rpmCeiling } of spun) expect(rpmCeiling, key).toBeCloseTo(1996.55, 1)
    expect(spun.length).toBeGreaterThan(6)
  })

  it('go by the diagonal of what dried out of round', () => {
    const list = operations(cylinder(), { moisture: 20 })
    // 1-1/8 in square.
    for (const key of ['remount', 'true-up-s0'])
      expect(named(list, key).rpmCeiling).toBeCloseTo(Math.min(3000, 6000 / (1.125 * Math.SQRT2)), 6)
  })

  it('are no higher for marking and gauging than for roughing', () => {
    const knob = inchProfile([
      [0, 0.75, 'cove', { depth: 2 }],
      [0.5, 0.75],
      [0.5, 1.25, 'ovolo'],
      [1, 1],
    ])
    const checks: RouteInput['checks'] = [
      { key: 's1', at: inches(0.5), kind: 'diameter', target: inches(0.75) },
    ]
    const list = operations(knob, { checks, mount: 'chuck' })
    // 2000 over the diagonal of 1-3/8 in: 1028, so 850 on this lathe; 3000 over 1-21/64 in would be 1700 and more.
    expect(named(list, 'rough-s0').rpm).toBe(850)
    for (const key of ['story-stick', 'size-s1']) expect(named(list, key).rpm, key).toBe(850)
    expect(named(list, 'cove-s0').rpm!).toBeGreaterThan(850)
  })

  it('are low for the finish, as its words say', () => {
    for (const finish of ['oil', 'wax', 'polish'] as const) {
      const slow = named(operations(cylinder(), { finish }), 'finish-on-lathe')
      expect(slow.rpm).toBe(400)
      expect(slow.why).toMatch(/low/i)
    }
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
    // Roughing stops at the two crests of 2-1/2 in, which are then sized already.
    const crest = inches(2.5 + 5 / 64)
    expect(places.map((place) => place.diameter)).toEqual([crest, crest, ...calipers])
  })

  it('are left out where roughing has come to the very caliper: then that carries it', () => {
    const checks: RouteInput['checks'] = [
      { key: 'a', at: inches(1), kind: 'diameter', target: inches(2) },
      { key: 'b', at: inches(3), kind: 'diameter', target: inches(2) },
      { key: 'c', at: inches(2), kind: 'diameter', target: inches(1.5) },
    ]
    const profile = inchProfile([
      [0, 2],
      [1, 2],
      [1.5, 1.5],
      [2.5, 1.5],
      [3, 2],
      [4, 2],
    ])
    const { operations: list, places } = routeFor(routeInput(profile, { checks }))
    // 2 in, 1/16 for the finishing cut, 1/64 for sanding.
    const crest = inches(2 + 5 / 64)
    expect(named(list, 'rough-s0')).toMatchObject({ caliperStation: 'a', caliperAlso: ['b'] })
    expect(named(list, 'rough-s0').caliper).toBeCloseTo(crest, 9)
    expect(named(list, 'rough-s0').name).toBe('Rough it to a 2-5/64 in cylinder')
    const cut = list.filter((o) => o.kind === 'size')
    expect(cut.map((o) => o.caliperStation)).toContain('c')
    for (const o of cut) expect(o.caliper).toBeCloseTo(inches(1.5 + 5 / 64), 9)
    expect(places.map((place) => place.station)).toEqual(expect.arrayContaining(['a', 'b', 'c']))
  })

  it('cut wood wherever there is one: the blank is roughed 1/8 in over where it allows that', () => {
    const crest: RouteInput['checks'] = [
      { key: 's3', at: inches(12), kind: 'diameter', target: inches(1.875) },
    ]
    for (const finish of ['oil', 'film'] as const) {
      const list = operations(leg(), { checks: [...checks, ...crest], finish })
      expect(named(list, 'rough-s0').name).toBe('Rough the stretch from 0 in to 12 in to a 2 in cylinder')
      expect(named(list, 'rough-s0').caliper).toBeUndefined()
      for (const o of list.filter((o) => o.kind === 'size')) expect(o.work.removed, o.key).toBeGreaterThan(1)
      const film = finish === 'film' ? 0.1 : 0
      expect(named(list, 'size-s3').caliper).toBeCloseTo(inches(1.875 + 5 / 64) - film, 9)
    }
  })

  it('are carried by the trueing up where the wood is dried in between', () => {
    const at: RouteInput['checks'] = [{ key: 's0', at: inches(1), kind: 'diameter', target: inches(1) }]
    const list = operations(cylinder(), { moisture: 20, checks: at })
    expect(named(list, 'rough-s0').caliper).toBeUndefined()
    expect(named(list, 'true-up-s0').caliper).toBeCloseTo(inches(1 + 5 / 64), 9)
    expect(named(list, 'true-up-s0').name).toBe(
      'True up the stretch from 0 in to 6 in to a 1-5/64 in cylinder',
    )
  })

  it('say so where the square leaves no wood over', () => {
    const tight = inchProfile([
      [0, undefined, 'square', { side: inches(2) }],
      [4, 2],
      [8, 2, 'square', { side: inches(2) }],
      [12, undefined],
    ])
    const list = operations(tight, { checks: [] })
    expect(named(list, 'rough-s1').caution).toContain('flats may stay')
    expect(list.filter((o) => o.kind === 'size')).toEqual([])
  })

  it('make at least one in every turned stretch', () => {
    const sized = operations(newel(), { checks: [] }).filter((operation) => operation.kind === 'size')
    expect(sized.length).toBeGreaterThan(0)
  })
})

describe('the spur', () => {
  it('is let into saw kerfs in very hard wood, and driven in elsewhere', () => {
    const hickory = named(operations(leg(), { hardnessN: 8100 }), 'centres')
    expect(hickory).toMatchObject({ name: 'Mark both centres by the diagonals, saw kerfs for the spur' })
    expect(hickory.tool).toContain('fine saw')
    for (const more of [{ hardnessN: 4500 }, {}, { hardnessN: 8100, mount: 'cup' as const }])
      expect(named(operations(leg(), more), 'centres').name).toBe('Mark both centres by the diagonals')
  })
})

describe('the jam chuck', () => {
  it('is a mounting of its own: speed down first, then the face', () => {
    const knob = inchProfile([
      [0, 0.5],
      [0.5, 0.5],
      [1.5, 1.5],
    ])
    const list = operations(knob, { mount: 'screw', match: false })
    inOrder(list, 'part', 'reverse', 'jam-face-top')
    const [reverse, face] = [named(list, 'reverse'), named(list, 'jam-face-top')]
    expect(reverse.rpm).toBe(400)
    // Roughing speed at 1-1/2 in round at the most, from memory of a speed table: 3000/D, never that of shaping.
    expect(face.rpm).toBeLessThanOrEqual(3000 / 1.5)
    expect(reverse.caution).toContain('Speed down first')
    expect(face.pass).toBe(reverse.pass)
    expect(reverse.pass).toBe(named(list, 'part').pass + 1)
  })
})

describe('the rest', () => {
  it('is moved only with the lathe stopped, said wherever a cut goes over several positions', () => {
    const list = operations(leg(), { lathe: { ...stepLathe, restLength: inches(6) } })
    const several = list.filter((o) => o.restThrough !== undefined)
    expect(several.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['rough', 'story-stick', 'taper']))
    for (const { caution, key } of several) expect(caution, key).toContain('only with the lathe stopped')
  })

  it('stands at as many positions as its length needs, counted from the tail', () => {
    const list = operations(leg(), { lathe: { ...stepLathe, restLength: inches(6) } })
    // Bead in the first 6 in from the foot; the long taper from 1-3/4 in to 12 in is cut from both positions.
    expect(named(list, 'bead-s1').restPosition).toBe(1)
    expect([1, 2]).toContain(named(list, 'taper-s2').restPosition)
    expect(named(list, 'taper-s2').restPosition! + named(list, 'taper-s2').restThrough!).toBe(3)
    expect(named(list, 'shoulder-s3')).toMatchObject({ restPosition: 2 })
    expect(named(list, 'shoulder-s3').restThrough).toBeUndefined()
  })

  it('goes from the tail on to rough, and begins all else where it stands nearer', () => {
    const list = operations(leg(), { lathe: { ...stepLathe, restLength: inches(6) } })
    expect(named(list, 'rough-s0')).toMatchObject({ restPosition: 1, restThrough: 2 })
    expect(named(list, 'story-stick')).toMatchObject({ restPosition: 2, restThrough: 1 })
  })

  it('is the longest of the lathe that does not reach past the blank', () => {
    // The blank is 17 in and a little more.
    const rests = [inches(6), inches(15), inches(24)]
    const list = operations(leg(), { lathe: { ...stepLathe, restLength: inches(6), rests } })
    expect(list.filter((o) => (o.restPosition ?? 1) > 1 || o.restThrough !== undefined)).toEqual([])
  })
})

describe('squares', () => {
  it('are sanded by hand before the set is checked and before any finish', () => {
    const at: RouteInput['checks'] = [{ key: 's3', at: inches(14), kind: 'side', target: inches(2.25) }]
    const list = operations(leg(), { checks: at })
    const squares = named(list, 'sand-squares')
    expect(squares).toMatchObject({ stage: 'handwork', where: [inches(12), inches(16.5)] })
    expect(squares.rpm).toBeUndefined()
    // Four faces of 2-1/4 × 4-1/2 in.
    expect(squares.work.surface).toBeCloseTo(4 * inches(2.25) * inches(4.5), 6)
    expect(squares.work.count).toBe(4)
    inOrder(list, 'sand', 'sand-squares', 'check-set', 'finish-on-lathe', 'finish')
    expect(keys(operations(cylinder()))).not.toContain('sand-squares')
    expect(keys(operations(leg(), { grits: [] }))).not.toContain('sand-squares')
  })
})

describe('tenons', () => {
  const tenon = (more: Partial<RouteInput['joints'][number]> = {}): RouteInput['joints'] => [
    { kind: 'tenon', at: 0, size: [inches(0.75)], depth: inches(1), stage: 'square', ...more },
  ]
  const tenoned = (marked: boolean): Profile =>
    inchProfile([
      [0, 0.75, 'straight', marked ? { tenon: true } : {}],
      [1, 0.75],
      [1, 1.5],
      [9, 1.5],
    ])

  it('that are turned are cut once, as part of the profile, and never sawn', () => {
    for (const more of [{}, { at: inches(0.5) }, { at: inches(1) }, { stage: 'turned' as const }]) {
      const list = operations(tenoned(true), { joints: tenon(more) })
      expect(kinds(list)).toContain('tenon')
      expect(kinds(list)).not.toContain('cut-tenon')
      expect(kinds(list)).not.toContain('joint-round')
    }
  })

  it('that the profile does not show are cut in the round, named by their place', () => {
    const list = operations(tenoned(false), { joints: tenon() })
    expect(kinds(list)).not.toContain('cut-tenon')
    expect(named(list, 'joint-round-j0').name).toBe('Cut the tenon at 0 in')
    expect(named(list, 'joint-round-j0').caution).toContain('draw it')
  })

  it('on a part left square are sawn', () => {
    const joints: RouteInput['joints'] = [
      { kind: 'tenon', at: inches(16.5), size: [10, 40], depth: inches(1), stage: 'square' },
    ]
    const list = operations(leg(), { joints })
    expect(named(list, 'cut-tenon-j0').where).toEqual([inches(15.5), inches(16.5)])
    expect(named(list, 'cut-tenon-j0').caution ?? '').not.toContain('turned')
  })
})

describe('joints in the round', () => {
  it('are named by their places and angles', () => {
    const hole = (at: number, angle: number): RouteInput['joints'][number] => ({
      kind: 'hole',
      at: inches(at),
      angle,
      size: [6],
      depth: 8,
      stage: 'turned',
    })
    const name = (...joints: RouteInput['joints']): string =>
      named(operations(cylinder(), { joints }), 'joint-round-j0').name
    expect(name(hole(3, 30))).toBe('Cut the hole at 3 in, 30° from face A towards B')
    expect(name(hole(3, 0), hole(3, 120), hole(3, 240))).toBe(
      'Cut the 3 holes at 3 in, 0°, 120°, 240° from face A towards B',
    )
    expect(name(hole(2, 0), hole(4, 0))).toBe('Cut the 2 holes at 2 in and 4 in, 0° from face A')
    expect(name(hole(3, 45), hole(3, -45))).toBe(
      'Cut the 2 holes at 3 in, 45° from face A towards B; 45° from face A towards D',
    )
  })
})

describe('names', () => {
  it('put the right article before a size', () => {
    const rough = (d: number): string =>
      named(
        operations(
          inchProfile([
            [0, d],
            [6, d],
          ]),
        ),
        'rough-s0',
      ).name
    expect(rough(8 - 5 / 64)).toBe('Rough it to an 8 in cylinder')
    expect(rough(11 - 5 / 64)).toBe('Rough it to an 11 in cylinder')
    expect(rough(1)).toBe('Rough it to a 1-5/64 in cylinder')
  })

  it('say between what a slender part is sanded', () => {
    const list = operations(
      inchProfile([
        [0, 1],
        [20, 1],
      ]),
      { whip: { at: inches(10), criticalRpm: 3000, rest: 'advised' } },
    )
    expect(list.find((o) => o.kind === 'sand')!.name).toMatch(/^Sand the stretch from 0 in to/)
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
