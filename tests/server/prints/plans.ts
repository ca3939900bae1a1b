import { defaultAllowances } from '../../../shared/blank/allowances.ts'
import type { CutPlan } from '../../../shared/cutting/board.ts'
import type { Job } from '../../../shared/job.ts'
import type { Plan } from '../../../shared/plan.ts'
import type { Station } from '../../../shared/profile/profile.ts'
import type { Operation } from '../../../shared/route/operation.ts'
import type { Shop } from '../../../shared/shop.ts'

const inch = (n: number): number => n * 25.4

/** A baluster of 30 in with a square at each end, its figures put down by hand. */
export const balusterStations: Station[] = [
  { at: 0, then: 'square', side: inch(1.75), shoulder: 'rounded' },
  { at: inch(5), diameter: inch(1.5), then: 'bead', rise: inch(0.125), name: 'foot bead' },
  { at: inch(5.5), diameter: inch(1.5), then: 'straight' },
  { at: inch(5.5), diameter: inch(1), then: 'straight', name: 'neck', check: true },
  { at: inch(6.5), diameter: inch(1), then: 'ogee' },
  { at: inch(12), diameter: inch(1.625), then: 'straight', name: 'vase' },
  { at: inch(20), diameter: inch(0.875), then: 'cove', depth: inch(0.125) },
  { at: inch(21), diameter: inch(0.875), then: 'straight' },
  { at: inch(21), diameter: inch(1.375), then: 'straight', name: 'top ring', check: true },
  { at: inch(22), diameter: inch(1.375), then: 'straight' },
  { at: inch(22), diameter: inch(1.75), then: 'square', side: inch(1.75) },
  { at: inch(30), then: 'straight' },
]

export const shop: Shop = {
  name: 'Bench Hollow Turnery',
  heading: 'Bench Hollow Turnery, Mill Lane',
  currency: 'USD',
  units: 'in',
  lathes: [
    {
      name: 'Long bed',
      betweenCentres: inch(48),
      swing: inch(14),
      swingOverRest: inch(10),
      speeds: { steps: [500, 900, 1400, 2200] },
      restLength: inch(12),
    },
  ],
  tools: [],
  calipers: 4,
  stock: [],
  yardBoards: [],
  grade: 'FAS',
  extraWood: 0.2,
  kerf: inch(0.125),
  endTrim: inch(1),
  edgeTrim: inch(0.125),
  minOffcut: inch(12),
  priceBy: 'exact',
  allowances: {},
  spareConfidence: 0.9,
  record: { spoiled: 0, made: 0 },
  learningRate: 0.95,
  learningForm: 'unit',
  people: 1,
  workDays: ['mon', 'tue', 'wed', 'thu', 'fri'],
  closed: [],
  changes: {},
  gaugeMinutes: 4,
  hoursPerDay: 8,
  restAllowance: 0.15,
  timeSpread: 0.2,
  minuteFactors: {},
  grits: [120, 180, 220],
  touchUpsPerRegrind: 5,
  touchUpMinutes: 1,
  regrindMinutes: 4,
  labourPerHour: 45,
  marginOnCost: 0.2,
  finishPerSquareMetre: 8,
  abrasivePerPiece: 0.3,
  minimumCharge: 60,
  species: [],
  lots: [],
  yards: [],
}

function job(change: Partial<Job> = {}): Job {
  return {
    name: 'Gallery balusters',
    customer: 'Hill House',
    due: '2027-02-12',
    units: 'in',
    species: 'maple-sugar',
    moisture: 8,
    serviceMoisture: 8,
    quantity: 12,
    match: true,
    profile: { stations: balusterStations, split: false },
    tolerance: {
      diameter: inch(1 / 32),
      position: inch(1 / 16),
      length: inch(1 / 32),
      side: inch(1 / 64),
      tenon: inch(1 / 64),
    },
    joints: [
      {
        kind: 'mortise',
        at: inch(26),
        face: 'A',
        size: [inch(3 / 8), inch(2)],
        depth: inch(1),
        stage: 'square',
      },
    ],
    mount: 'spur',
    perBlank: 1,
    grain: 'straight',
    finish: 'oil',
    use: 'guard',
    lumber: { sap: 'none', dryness: 'kiln', oneBoard: false, fromRack: true },
    allowances: {},
    instrument: { jawWidth: inch(1 / 8) },
    unread: [],
    ...change,
  }
}

const work = { length: 0, surface: 0, removed: 0, count: 1, diameter: inch(1.75) }

function operation(
  change: Partial<Operation> & Pick<Operation, 'key' | 'kind' | 'name' | 'stage'>,
): Operation {
  return {
    pass: 1,
    where: null,
    tool: '',
    minutesOnce: 0,
    minutesEach: 1,
    learns: true,
    work,
    after: [],
    why: '',
    ...change,
  }
}

/** Two boards of 8 in × 8 ft, three strips each of three blanks of 30-1/2 in. */
function cut(): CutPlan {
  const [side, length, kerf, trim, edge] = [inch(2), inch(30.5), inch(0.125), inch(1), inch(0.125)]
  const strips = [0, 1, 2].map((i) => {
    const y = edge + i * (side + kerf)
    const across: [number, number] = [y, y + side]
    return {
      side,
      across,
      blanks: [0, 1, 2].map((k) => ({
        key: 'blank',
        from: trim + k * (length + kerf),
        to: trim + k * (length + kerf) + length,
        across,
      })),
    }
  })
  const board = {
    key: 'rack 3',
    process: 'rip-first' as const,
    width: inch(8),
    length: inch(96),
    thickness: inch(2),
    boardFeet: 32 / 3,
    boardFeetTallied: 10,
    cost: 96,
    strips,
  }
  const offcut = { from: 0, to: inch(96), across: [inch(6.5), inch(8)] as [number, number] }
  return {
    boards: [
      { ...board, copy: 1, offcuts: [offcut] },
      { ...board, copy: 2, offcuts: [offcut] },
    ],
    boardFeetBought: 64 / 3,
    boardFeetTallied: 20,
    boardFeetInBlanks: 15.25,
    yield: 15.25 / (64 / 3),
    cost: 192,
    lowerBound: 187.2,
    proven: false,
    unmet: [],
    seconds: 0.01,
  }
}

export const SAW_CAUTION = 'Keep the rest clear of the square and turn the blank once by hand.'
export const NECK_CAUTION = 'The step is close: measure 1/16 in clear of it.'

const operations: Operation[] = [
  operation({
    key: 'rip',
    kind: 'rip',
    name: 'Rip strips',
    stage: 'milling',
    pass: 0,
    tool: 'table saw',
    minutesEach: 1.5,
    learns: false,
  }),
  operation({
    key: 'mount',
    kind: 'mount',
    name: 'Mount between centres',
    stage: 'set-up',
    tool: 'spur centre',
    minutesEach: 0.8,
  }),
  operation({
    key: 'shoulder-s1',
    kind: 'shoulder',
    name: 'Cut the shoulder',
    stage: 'turning',
    where: [inch(5), inch(5)],
    tool: 'skew 3/4 in',
    rpm: 900,
    rpmCeiling: 2424,
    ceilingBy: 'square stock, 6000/D',
    minutesEach: 1.1,
    caution: SAW_CAUTION,
  }),
  operation({
    key: 'size-s3',
    kind: 'size',
    name: 'Size the neck',
    stage: 'turning',
    where: [inch(5.5), inch(6.5)],
    tool: 'parting tool',
    rpm: 1400,
    rpmCeiling: 2900,
    ceilingBy: 'whip',
    caliper: inch(1.0625),
    caliperStation: 's3',
    minutesEach: 0.7,
  }),
  operation({
    key: 'sand',
    kind: 'sand',
    name: 'Sand',
    stage: 'sanding',
    where: [inch(5), inch(22)],
    tool: 'abrasive',
    rpm: 900,
    rpmCeiling: 2900,
    ceilingBy: 'whip',
    minutesEach: 4,
  }),
] // prettier-ignore

/** A plan whose every figure is put down by hand, so that a print can be held to it. */
export function balusterPlan(change: Partial<Job> = {}): Plan {
  const made = job(change)
  return {
    job: made,
    allowances: defaultAllowances(made.units),
    part: {
      length: inch(30),
      maxDiameter: inch(1.75),
      minDiameter: inch(0.875),
      maxSide: inch(1.75),
      volume: 1e6,
      surface: 1e5,
      surfaceTurned: 5e4,
      centroid: 380,
      mass: 712,
      density: 712,
    },
    checkStations: [
      {
        key: 's3',
        name: 'neck',
        at: inch(6),
        kind: 'diameter',
        target: inch(1),
        plus: inch(1 / 32),
        minus: inch(1 / 32),
        fixed: false,
        tenon: false,
        chosen: 'marked',
        caution: NECK_CAUTION,
      },
      {
        key: 's8',
        name: 'top ring',
        at: inch(21.5),
        kind: 'diameter',
        target: inch(1.375),
        plus: inch(1 / 32),
        minus: inch(1 / 32),
        fixed: true,
        tenon: true,
        chosen: 'marked',
      },
    ],
    blank: {
      side: inch(1.75),
      sawn: inch(2),
      length: inch(30.5),
      stock: { perBlank: 1, sticks: 14 },
      layers: 1,
      nominal: '8/4',
      thickness: inch(2),
      layerThickness: inch(2),
      diagonal: inch(1.75) * Math.SQRT2,
      mass: 1080,
      lathes: [{ name: 'Long bed', fits: true, why: [] }],
      need: 12,
      spares: 2,
      count: 14,
      practice: 0,
      lengthParts: { parts: inch(30), foot: 0, top: inch(0.5), between: 0, mount: 'spur', drivenEnd: 'top' },
      cautions: [],
    },
    cutOrder: {
      units: 'in',
      kerf: inch(0.125),
      endTrim: inch(1),
      edgeTrim: inch(0.125),
      process: 'either',
      priceBy: 'exact',
      minOffcut: inch(12),
      seconds: 10,
      currency: 'USD',
      blanks: [{ key: 'blank', side: inch(2), length: inch(30.5), count: 14, thickness: inch(2) }],
      boards: [
        {
          key: 'rack 3',
          width: inch(8),
          length: inch(96),
          thickness: inch(2),
          count: 2,
          pricePerBoardFoot: 9,
          defects: [{ from: inch(94), to: inch(96) }],
        },
      ],
    },
    cut: cut(),
    yard: {
      species: made.species,
      nominal: '8/4',
      leastThickness: inch(2),
      boardFeet: { net: 11.86, geometric: 15, grade: 18, extra: 3.6, ask: 22 },
      geometricYield: 0.79,
      gradeYield: 10 / 12,
      gradeName: 'FAS',
      extra: 0.2,
      leastWidth: inch(2.25),
      bestLengths: [
        { lengthFt: 8, waste: 0.05, holds: [{ length: inch(30.5), count: 3 }], left: inch(2.25) },
      ],
      stripWidths: [{ strips: 1, width: inch(2.25) }],
      surfaced: false,
      softwood: false,
      dryness: 'kiln',
      sap: 'none',
      grain: 'any',
      oneBoard: false,
      grade: 'FAS',
      blanks: [],
      grades: [],
      squares: [],
      dressed: [],
      notes: ['Look at all four faces of every square.'],
    },
    boardFeet: { blanks: 15.25, bought: 64 / 3, tallied: 20 },
    operations,
    calipers: {
      settings: [
        { diameter: inch(1.4375), stations: ['s8'] },
        { diameter: inch(1.0625), stations: ['s3'] },
      ],
      perPiece: 0,
      total: 2,
      order: [inch(1.4375), inch(1.0625)],
      count: 4,
    },
    passes: { chosen: 'one', one: 300, several: 340, why: '' },
    grinding: [
      {
        tool: 'skew 3/4 in',
        minutesCutting: 40,
        life: 13,
        piecesBetween: 4,
        touchUps: 3,
        regrinds: 1,
        minutes: 7,
        why: '',
      },
    ],
    sanding: { grits: [120, 180, 220], minutesEach: 4, rpm: 900, why: 'Closed-grained wood.' },
    finish: {
      kind: 'oil',
      onLathe: true,
      coats: 2,
      dryHours: 24,
      why: 'The maker’s sheet comes first.',
      caution: 'Oily rags ignite by themselves: lay them flat outdoors.',
    },
    time: {
      minutes: 226,
      perPiece: 16.1,
      first: 22,
      last: 14.5,
      p10: 180,
      p50: 226,
      p90: 280,
      byStage: { milling: 20, turning: 150, sanding: 56 },
      elapsed: { workDays: 0.6, waitDays: 1, days: 2, why: 'work at 8 h a day' },
    },
    quote: {
      currency: 'USD',
      lines: [{ key: 'wood', name: 'Secret wood cost', amount: 192, why: '' }],
      total: 1234.5,
      perPiece: 102.88,
      cautions: [],
    },
    cautions: [{ about: 'part', text: 'The local building code comes first.' }],
  } // prettier-ignore
}

const knobStations: Station[] = [
  { at: 0, diameter: 18, then: 'straight', tenon: true, fixed: true, name: 'tenon' },
  { at: 15, diameter: 18, then: 'straight' },
  { at: 15, diameter: 24, then: 'cove' },
  { at: 21, diameter: 24, then: 'bead', rise: 3 },
  { at: 42, diameter: 30, then: 'straight' },
]

/** A metric knob of 42 mm, turned several to a stick. */
export function knobPlan(): Plan {
  const made = balusterPlan({
    name: 'Drawer knobs',
    units: 'mm',
    species: 'beech-american',
    quantity: 40,
    joints: [],
    use: 'furniture',
    due: undefined,
    profile: { stations: knobStations, split: false },
    mount: 'chuck',
    perBlank: 4,
    allowances: { endWaste: defaultAllowances('mm').endWaste },
  }) // prettier-ignore
  return {
    ...made,
    part: { ...made.part, length: 42, maxDiameter: 33, minDiameter: 12, maxSide: undefined, mass: 21 },
    // Four knobs of 42 mm, 3 gaps of 6, 13 at the foot, 26 at the top.
    blank: {
      ...made.blank,
      side: 36,
      length: 225,
      lengthParts: { parts: 168, foot: 13, top: 26, between: 18, mount: 'chuck', drivenEnd: 'top' },
      stock: { perBlank: 4, sticks: 12 },
      need: 10,
      spares: 2,
      count: 12,
    },
  }
}

/** Sixty stations 4 mm apart, long names, many operations, cautions and boards: nothing has room to spare. */
export function crowdedPlan(): Plan {
  const stations: Station[] = Array.from({ length: 61 }, (_, i) => ({
    at: i * 4,
    diameter: 30 + 6 * (i % 2),
    then: 'straight',
    name: `ring number ${i + 1} counted from the foot, the wide one`,
  }))
  const made = balusterPlan({
    name: 'Newel posts of the long gallery on the second floor, east and west wing together, with the landing and the stair',
    quantity: 60,
    customer:
      'The trustees of the old house behind the mill at the lower ford, for the attention of the steward of works',
    profile: { stations, split: false },
    joints: [],
    use: 'stair',
  })
  const more = Array.from({ length: 40 }, (_, i) =>
    operation({
      key: `straight-s${i}`,
      kind: 'straight',
      name: `Turn the straight between ring number ${i + 1} and the next one up`,
      stage: i % 5 ? 'turning' : 'layout',
      pass: 1 + Math.floor(i / 20),
      where: [i * 4 + 0.3, i * 4 + 4.7],
      tool: 'skew 3/4 in, ground to 70 degrees',
      rpm: 1400,
      rpmCeiling: 2424.7 + i,
      ceilingBy: `6000 ÷ ${(2 + i / 100).toFixed(2)} in, square or untrue`,
      caliper: 30.123 + i,
      minutesEach: 1.23,
      minutesOnce: i % 3,
      ...(i % 4 === 0
        ? {
            caution: `Slender here: take light cuts and keep a hand behind ring number ${i + 1}; stop when it sings, put up the rest and start again at a lower speed than before.`,
          }
        : {}),
    }),
  ) // prettier-ignore
  const boards = Array.from({ length: 9 }, (_, i) => ({
    ...made.cut.boards[0]!,
    key: `board ${i + 1} of the stack at the wall`,
    copy: 1,
    length: inch(96 + i),
  }))
  return {
    ...made,
    part: { ...made.part, length: 240, maxDiameter: 36, minDiameter: 30, maxSide: undefined },
    operations: [...made.operations, ...more],
    cut: { ...made.cut, boards, unmet: [{ key: 'blank', count: 3 }] },
    calipers: {
      ...made.calipers,
      order: more.map(({ caliper }) => caliper!),
      settings: more.map(({ caliper, key }, i) => ({ diameter: caliper!, stations: [`s${i}`, key] })),
    },
    cautions: [
      ...made.cautions,
      { about: 'job', text: 'Wear a mask: the dust of this wood sensitises. '.repeat(4).trim() },
    ],
  } // prettier-ignore
}

/** A column of 12 in across and 50 in long: wider and longer than any sheet. */
export function thickPlan(): Plan {
  const stations: Station[] = [
    { at: 0, diameter: inch(12), then: 'straight' },
    { at: inch(10), diameter: inch(12), then: 'bead', rise: inch(0.5), name: 'great ring' },
    { at: inch(14), diameter: inch(12), then: 'straight' },
    { at: inch(50), diameter: inch(9) },
  ].map((station) => ({ then: 'straight', ...station }) as Station)
  const made = balusterPlan({
    name: 'Porch columns',
    quantity: 2,
    profile: { stations, split: false },
    joints: [],
    use: 'furniture',
    customer: undefined,
    due: undefined,
  })
  const calipers = {
    ...made.calipers,
    order: [inch(13), inch(9), inch(4)],
    settings: [
      { diameter: inch(13), stations: ['s1c'] },
      { diameter: inch(9), stations: ['s3'] },
      { diameter: inch(4), stations: ['s0'] },
    ],
  }
  return {
    ...made,
    quote: undefined,
    calipers,
    part: {
      ...made.part,
      length: inch(50),
      maxDiameter: inch(13),
      minDiameter: inch(9),
      maxSide: undefined,
      mass: 61_500,
    },
  }
}
