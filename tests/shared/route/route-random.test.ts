import { describe, expect, it } from 'vitest'
import { defaultAllowances } from '../../../shared/blank/allowances.ts'
import { profileBreaches } from '../../../shared/profile/check.ts'
import { spansOf } from '../../../shared/profile/profile.ts'
import { diametersOf } from '../../../shared/profile/radius.ts'
import type { RouteInput } from '../../../shared/route/input.ts'
import type { OperationDraft } from '../../../shared/route/operation.ts'
import { routeFor } from '../../../shared/route/route.ts'
import { randomProfile, seeded } from './random-profile.ts'
import { benchTools, stepLathe } from './route-inputs.ts'

const mounts: RouteInput['mount'][] = ['spur', 'cup', 'chuck', 'screw', 'jam']
const finishes: RouteInput['finish'][] = ['none', 'oil', 'wax', 'polish', 'film']

/** A job around a random profile: any mount, lathe, finish, whip and moisture. */
function randomInput(seed: number): RouteInput {
  const random = seeded(seed)
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)]!
  const profile = randomProfile(random)
  const spans = spansOf(profile)
  const length = spans.at(-1)!.to
  const largest = Math.max(...spans.map((span) => diametersOf(span).greatest))
  const hasSquare = spans.some((span) => span.shape === 'square')
  const side = hasSquare
    ? Math.max(...spans.map((span) => (span.shape === 'square' ? span.d0 : 0)))
    : largest + 4
  const squareFoot = spans[0]!.shape === 'square'
  const squareTop = spans.at(-1)!.shape === 'square'
  const parts = hasSquare ? 1 : 1 + Math.floor(random() * 3)
  const [foot, top] = [squareFoot ? 0 : 12.7, squareTop ? 0 : 19]
  return {
    profile,
    checks: spans
      .filter((span) => span.shape !== 'square' && random() < 0.4)
      .map((span) => ({ key: `s${span.index}`, at: span.from, kind: 'diameter', target: span.d0 })),
    joints:
      hasSquare && random() < 0.4
        ? [{ kind: 'mortise', at: length / 2, size: [10, 50], depth: 20, stage: 'square' }]
        : [],
    mount: pick(mounts),
    blank: {
      side,
      sawn: side + 4,
      length: foot + top + parts * length + (parts - 1) * 6,
      stock: { perBlank: parts, sticks: 9 },
      layers: random() < 0.1 ? 3 : 1,
      diagonal: side * Math.SQRT2,
      count: 9,
      lengthParts: {
        parts: parts * length,
        foot,
        top,
        between: (parts - 1) * 6,
        mount: 'spur',
        drivenEnd: pick(['foot', 'top'] as const),
      },
    },
    allowances: defaultAllowances('in'),
    units: 'in',
    quantity: 8,
    match: random() < 0.7,
    finish: pick(finishes),
    grain: 'any',
    use: 'furniture',
    moisture: random() < 0.2 ? 25 : 8,
    serviceMoisture: 8,
    lathe:
      random() < 0.1
        ? undefined
        : random() < 0.5
          ? { ...stepLathe, rests: [100, 450, 600] }
          : {
              name: 'Small lathe',
              speeds: { least: 60 + random() * 700, most: 3200 },
              limitRpm: 800 + random() * 3000,
              restLength: 200,
            },
    ...(random() < 0.3 && { accessoryRpm: 800 + random() * 3000 }),
    tools: random() < 0.3 ? benchTools.filter(() => random() < 0.5) : benchTools,
    grits: [120, 180, 220],
    calipers: 3,
    whip: {
      at: length / 2,
      criticalRpm: 300 + random() * 9000,
      rest: pick(['none', 'none', 'advised', 'needed'] as const),
    },
    blankCriticalRpm: 300 + random() * 15000,
  }
}

const SEEDS = 10_000
const forming = /^(straight|taper|bead|cove|ovolo|cavetto|ogee|curve|tenon)$/

const MM = 25.4
/** Of a bar held at one end over the same between two supports: first roots 1.8751 and π, squared (vibration texts). */
const ONE_END = (1.8751 / Math.PI) ** 2

/**
 * The highest speed that could be allowed, reckoned anew: lathe, accessory, 6000/D on the diagonal while it has corners
 * or is glued up, 9000/D on what is certainly left of it when round, and half of where it whips.
 */
function highestRpm(
  { profile, blank, lathe, accessoryRpm, whip, mount, blankCriticalRpm }: RouteInput,
  kind: string,
): number {
  const spans = spansOf(profile)
  const square = ['mount', 'shoulder', 'rough'].includes(kind)
  const cornered =
    square || profile.split || blank.layers > 1 || spans.some((span) => span.shape === 'square')
  const round = Math.max(0, ...spans.map((span) => diametersOf(span).greatest))
  const held = mount === 'screw' || mount === 'jam' ? ONE_END : 1
  const speeds = lathe?.speeds
  return Math.min(
    cornered ? 6000 / (blank.diagonal / MM) : 9000 / (round / MM),
    (held * (square ? blankCriticalRpm : whip.criticalRpm)) / 2,
    accessoryRpm ?? Infinity,
    lathe?.limitRpm ?? Infinity,
    speeds ? ('steps' in speeds ? Math.max(...speeds.steps) : speeds.most) : Infinity,
  )
}

/** Speeds above a limit, and mountings that do not start at the slowest. */
function speedFaults(input: RouteInput, operations: OperationDraft[]): string[] {
  const speeds = input.lathe?.speeds
  const slowest = speeds && ('steps' in speeds ? Math.min(...speeds.steps) : speeds.least)
  return operations.flatMap(({ key, kind, rpm }) => [
    ...(rpm !== undefined && rpm > highestRpm(input, kind) * (1 + 1e-4)
      ? [`${key} runs too fast at ${rpm}`]
      : []),
    ...(/^(mount|remount|return|reverse)$/.test(kind) && rpm !== undefined && rpm !== slowest
      ? [`${key} does not start with the speed down`]
      : []),
  ])
}

/** What must come first by the trade, said once more: [kind, kinds that come before it where they meet its wood]. */
const besideFirst: readonly [RegExp, RegExp][] = [
  [/^rough$/, /^shoulder$/],
  [/^(taper|cove|bead|ovolo|cavetto|ogee|curve)$/, /^(straight|step-face)$/],
  [/^cove$/, /^bead$/],
  [forming, /^size$/],
]
/** The same of the whole piece: these come after every one of those. */
const wholeFirst: readonly [RegExp, RegExp][] = [
  [/^mount$/, /^(rip|plane|crosscut|glue|mortise|bore|cut-tenon|strike-shoulders|centres)$/],
  [/^(journal|story-stick|size|remount)$/, /^(rough|shoulder)$/],
  [/^true-up$/, /^dry$/],
  [/^(size|straight|taper|bead|cove|ovolo|cavetto|ogee|curve|tenon)$/, /^(journal|story-stick|true-up)$/],
  [/^(end|blend|check-set)$/, /^(straight|taper|bead|cove|ovolo|cavetto|ogee|curve|tenon|sand)$/],
  [/^(part|nub|finish-on-lathe|joint-round)$/, /^(end|blend|check-set|return)$/],
  [/^(reverse|pare-ends)$/, /^part$/],
  [/^jam-face$/, /^reverse$/],
  [/^(finish|pack)$/, /^(part|nub|jam-face|pare-ends|split|sand-squares)$/],
]

function precedenceFaults(operations: OperationDraft[]): string[] {
  const faults: string[] = []
  operations.forEach((one, i) => {
    for (const other of operations.slice(i + 1)) {
      for (const [late, early] of wholeFirst)
        if (late.test(one.kind) && early.test(other.kind))
          faults.push(`${one.key} stands before ${other.key}`)
      // Slender work is finished stretch by stretch: what lies in a later one cannot be waited for.
      if ((other.stretch ?? 0) > (one.stretch ?? Infinity) || !one.where || !other.where) continue
      const meets = other.where[0] <= one.where[1] + 1e-6 && other.where[1] >= one.where[0] - 1e-6
      for (const [late, early] of besideFirst)
        if (meets && late.test(one.kind) && early.test(other.kind))
          faults.push(`${one.key} is cut before ${other.key} beside it`)
    }
  })
  const trued = operations.findIndex(({ kind }) => kind === 'true-up')
  if (trued >= 0 && !operations.slice(0, trued).some(({ kind }) => kind === 'remount'))
    faults.push('trued up before it is mounted again')
  const stretches = operations.flatMap(({ spans, kind, stretch }) =>
    stretch !== undefined && (spans || kind === 'sand') ? [stretch] : [],
  )
  if (stretches.some((stretch, i) => stretch < (stretches[i - 1] ?? 0)))
    faults.push('the stretches go back and forth')
  return faults
}

/** A thin place cut before a thick one, though nothing cut until then waits for it. */
function thinFaults(input: RouteInput, operations: OperationDraft[]): string[] {
  const spans = new Map(spansOf(input.profile).map((span) => [span.index, span]))
  const zoneOf = (index: number): number[] => {
    const zone = [index]
    for (const step of [-1, 1])
      for (let i = index + step; ; i += step) {
        // Stations at a step have no length and no span of their own.
        if (i < 0 || i > input.profile.stations.length || spans.get(i)?.shape === 'square') break
        if (spans.has(i)) zone.push(i)
      }
    return zone
  }
  const cuts = operations.filter(({ spans: cut, kind }) => cut && forming.test(kind))
  const isThin = ({ spans: cut }: OperationDraft): boolean => {
    const least = Math.min(...cut!.map((i) => diametersOf(spans.get(i)!).least))
    const thickest = Math.max(...zoneOf(cut![0]!).map((i) => diametersOf(spans.get(i)!).greatest))
    return least < thickest / 2 - 1e-6
  }
  const byKey = new Map(operations.map((operation) => [operation.key, operation]))
  const waitsFor = (operation: OperationDraft, key: string): boolean =>
    operation.after.includes(key) || operation.after.some((first) => waitsFor(byKey.get(first)!, key))
  return cuts.flatMap((thin, i) => {
    const next = cuts.slice(i + 1).find((cut) => cut.stretch === thin.stretch)
    if (!isThin(thin) || !next || isThin(next)) return []
    const needed = cuts.slice(i + 1).some((cut) => waitsFor(cut, thin.key))
    return needed ? [] : [`${thin.key} is thin and cut before ${next.key}`]
  })
}

/** What is wrong with a route, each fault in words. */
function faultsOf(input: RouteInput, operations: OperationDraft[]): string[] {
  const faults = [
    ...speedFaults(input, operations),
    ...precedenceFaults(operations),
    ...thinFaults(input, operations),
  ]
  const place = new Map(operations.map((operation, i) => [operation.key, i]))
  if (place.size !== operations.length) faults.push('two operations share a key')
  operations.forEach((operation, i) => {
    const { key, rpm, rpmCeiling, after, work } = operation
    if (rpm !== undefined && !(rpm <= rpmCeiling!)) faults.push(`${key} runs above its ceiling`)
    if (rpmCeiling !== undefined && rpm === undefined && !operation.caution)
      faults.push(`${key} has no speed and no word`)
    for (const first of after) if (!(place.get(first)! < i)) faults.push(`${key} stands before ${first}`)
    for (const value of Object.values(work))
      if (!Number.isFinite(value) || value < -1e-6) faults.push(`${key} has work ${JSON.stringify(work)}`)
  })
  if (operations.some((operation, i) => operation.pass < (operations[i - 1]?.pass ?? 0)))
    faults.push('the mountings go back and forth')
  const cuts = operations
    .filter((operation) => forming.test(operation.kind))
    .flatMap((operation) => operation.spans ?? [])
  const turned = spansOf(input.profile)
    .filter((span) => span.shape !== 'square')
    .map((span) => span.index)
  if ([...cuts].sort((a, b) => a - b).join() !== turned.join())
    faults.push(`spans ${turned} are formed as ${cuts}`)
  const at = (kind: string): number[] =>
    operations.flatMap((operation, i) => (operation.kind === kind ? [i] : []))
  const last = (kinds: RegExp): number =>
    Math.max(-1, ...operations.flatMap((operation, i) => (kinds.test(operation.kind) ? [i] : [])))
  if (Math.min(Infinity, ...at('finish-on-lathe'), ...at('finish')) < Math.max(-1, ...at('check-set')))
    faults.push('finished before the set is checked')
  if (Math.max(-1, ...at('crosscut')) > Math.min(Infinity, ...at('glue')))
    faults.push('glued before it is crosscut')
  for (const kind of ['size', 'story-stick'])
    for (const i of at(kind))
      if ((operations[i]!.rpm ?? 0) > Math.max(...at('rough').map((k) => operations[k]!.rpm ?? Infinity)))
        faults.push(`${operations[i]!.key} runs faster than the roughing`)
  if (operations.some((operation) => operation.kind === 'size' && operation.work.removed <= 0))
    faults.push('a sizing cut cuts nothing')
  if (Math.max(-1, ...at('rough')) > Math.min(Infinity, ...at('size')))
    faults.push('sized before it is roughed')
  if (at('end').some((i) => i < last(forming))) faults.push('an end is cut before the forming is done')
  for (const i of [...at('part'), ...at('nub')])
    if (at('check-set').some((check) => check > i)) faults.push('parted before the set is checked')
  return faults
}

describe('routeFor on ten thousand random jobs', () => {
  it('is tried on sound profiles only', () => {
    for (let seed = 1; seed <= 500; seed++) {
      const { profile } = randomInput(seed)
      expect(
        profileBreaches(profile, 'profile', { lengthMax: 20_000, thicknessMax: 1_000 }),
        `seed ${seed}`,
      ).toEqual([])
    }
  })

  it('never runs above a ceiling, cuts every span once, and keeps what must come first', () => {
    const faults: string[] = []
    for (let seed = 1; seed <= SEEDS && faults.length < 5; seed++) {
      const input = randomInput(seed)
      faults.push(...faultsOf(input, routeFor(input).operations).map((fault) => `seed ${seed}: ${fault}`))
    }
    expect(faults).toEqual([])
  }, 120_000)
})
