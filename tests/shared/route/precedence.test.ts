import { describe, expect, it } from 'vitest'
import type { Profile } from '../../../shared/profile/profile.ts'
import type { RouteInput } from '../../../shared/route/input.ts'
import type { OperationDraft } from '../../../shared/route/operation.ts'
import { routeFor } from '../../../shared/route/route.ts'
import { inches } from '../../../shared/units/length.ts'
import { inchProfile, leg, routeInput } from './route-inputs.ts'

/** All that an operation waits for, straight or by way of others. */
function waitsFor(list: OperationDraft[], key: string): Set<string> {
  const byKey = new Map(list.map((operation) => [operation.key, operation]))
  const waits = new Set<string>()
  const visit = (of: string): void => {
    for (const first of byKey.get(of)!.after) {
      if (waits.has(first)) continue
      waits.add(first)
      visit(first)
    }
  }
  visit(key)
  return waits
}

const route = (profile: Profile, more: Partial<RouteInput> = {}): OperationDraft[] =>
  routeFor(routeInput(profile, more)).operations

const checks: RouteInput['checks'] = [{ key: 'k', at: inches(1.75), kind: 'diameter', target: inches(1.25) }]

/** Every operation waits for those named, whatever the working order makes of it. */
function expectWaits(list: OperationDraft[], waits: Record<string, string[]>): void {
  for (const [key, first] of Object.entries(waits)) {
    const found = waitsFor(list, key)
    expect(
      first.filter((k) => !found.has(k)),
      `${key} waits for ${[...found]}`,
    ).toEqual([])
  }
}

describe('what an operation waits for', () => {
  it('on a leg: the square is done before it is mounted, the shoulder before the round, all cuts before paper', () => {
    const joints: RouteInput['joints'] = [
      { kind: 'mortise', at: inches(14), size: [10, 60], depth: 20, stage: 'square' },
      { kind: 'tenon', at: inches(16), size: [10, 40], depth: 20, stage: 'square' },
    ]
    expectWaits(route(leg(), { checks, joints }), {
      'strike-shoulders': ['square-ends', 'mortise-j0', 'cut-tenon-j1'],
      mount: ['centres', 'strike-shoulders', 'mortise-j0', 'cut-tenon-j1'],
      'rough-s0': ['shoulder-s3'],
      'story-stick': ['rough-s0', 'label'],
      'size-k': ['story-stick'],
      'bead-s1': ['size-k', 'size-s1'],
      'taper-s2': ['size-k'],
      sand: ['bead-s1', 'taper-s0', 'taper-s2'],
      'sand-squares': ['sand', 'end-foot'],
      'check-set': ['sand-squares'],
      'finish-on-lathe': ['sand', 'end-foot', 'check-set', 'return'],
      nub: ['check-set', 'finish-on-lathe'],
      finish: ['nub'],
      pack: ['finish'],
    })
  })

  it('on turned features: tapers for straights, beads for their faces, coves for the beads beside them', () => {
    const profile = inchProfile([
      [0, 1],
      [2, 1],
      [6, 1.5],
      [7, 1.5],
      [7, 1.25, 'bead', { rise: 3 }],
      [7.5, 1.25, 'cove', { depth: 3 }],
      [8, 1.25, 'straight', { tenon: true }],
      [9, 1.25],
    ])
    expectWaits(route(profile), {
      'taper-s1': ['straight-s0', 'straight-s2'],
      'bead-s4': ['step-face-s4'],
      'cove-s5': ['bead-s4'],
      'step-face-s4': ['straight-s2'],
      'end-foot': ['tenon-s6', 'sand', 'taper-s1'],
    })
  })

  it('in a chuck: parting for the check of the set, the jam chuck for the parting', () => {
    const list = route(
      inchProfile([
        [0, 1],
        [3, 1.25, 'ovolo'],
        [4, 1],
      ]),
      { mount: 'chuck', checks: [{ key: 's0', at: 0, kind: 'diameter', target: 25.4 }] },
    )
    expectWaits(list, {
      part: ['check-set', 'finish-on-lathe'],
      'jam-face-top': ['part'],
      pack: ['jam-face-top'],
    })
  })

  it('after drying: trueing up for the remounting, and every detail for both', () => {
    expectWaits(route(leg(), { moisture: 30, checks }), {
      dry: ['rough-s0', 'label'],
      remount: ['dry'],
      'true-up-s0': ['remount'],
      'story-stick': ['true-up-s0'],
      'bead-s1': ['true-up-s0'],
    })
  })

  it('on slender work: each stretch for the sanding of the one nearer the tail', () => {
    const list = route(
      inchProfile([
        [0, 0.75],
        [11, 1],
        [23, 0.75],
        [23, 1.25],
        [34, 1.25],
      ]),
      {
        whip: { at: inches(17), criticalRpm: 3000, rest: 'needed' },
      },
    )
    expectWaits(list, {
      journal: ['rough-s0'],
      'taper-s0': ['journal'],
      'sand-p1': ['taper-s0'],
      'taper-s1': ['sand-p1'],
      'straight-s3': ['sand-p2'],
      blend: ['sand-p1', 'sand-p2', 'sand-p3', 'straight-s3'],
      'end-foot': ['sand-p3', 'blend'],
    })
    expect(waitsFor(list, 'taper-s0')).not.toContain('straight-s3')
  })

  it('of strips, glue and split: each for the last that was done to it', () => {
    const input = routeInput(
      inchProfile(
        [
          [0, 1],
          [6, 1],
        ],
        true,
      ),
    )
    expectWaits(routeFor(input).operations, {
      plane: ['rest-strips'],
      crosscut: ['plane'],
      glue: ['crosscut'],
      'plane-blank': ['glue'],
      mount: ['plane-blank'],
      split: ['nub'],
      pack: ['split'],
    })
  })

  it('of layers long enough for the machines: faced once they are cut to length, planed once they are one', () => {
    const input = routeInput(leg())
    expectWaits(routeFor({ ...input, blank: { ...input.blank, layers: 3 } }).operations, {
      crosscut: ['rip', 'rest-strips'],
      'face-layers': ['crosscut'],
      glue: ['face-layers'],
      'plane-blank': ['glue'],
      'square-ends': ['plane-blank'],
      centres: ['plane-blank'],
    })
  })

  it('of several to a stick: paring for parting, the finish off the lathe for both', () => {
    const input = routeInput(
      inchProfile([
        [0, 1],
        [4, 1],
      ]),
      { finish: 'film', checks },
    )
    const blank = { ...input.blank, stock: { perBlank: 3, sticks: 3 } }
    expectWaits(routeFor({ ...input, blank }).operations, {
      part: ['check-set'],
      'pare-ends': ['part'],
      finish: ['nub', 'pare-ends'],
    })
  })

  it('of a square that is sanded: it is turned first', () => {
    const all = inchProfile([
      [0, undefined, 'square', { side: inches(2) }],
      [9, undefined],
    ])
    expectWaits(route(all), { 'sand-squares': ['square-ends'], finish: ['sand-squares'] })
  })
})
