import type { OperationKind } from '../shared/route/kinds.ts'
import { balusters, knobs, legs, posts } from './demo-jobs.ts'
import { before, key } from './demo-keys.ts'
import { type DemoProfile, library } from './demo-library.ts'

/** A job of the demo and how far it has come. Times are ISO 8601 in UTC. */
export interface DemoJob {
  id: string
  file: Record<string, unknown>
  enteredAt: string
  batch?: {
    key: string
    startedAt: string
    /** Under which it was said that the blanks are sawn. */
    sawnKey: string
    /** Pieces from 1 up to this one are finished. */
    finished: number
    /** Pieces after those, with the fraction of their operations that is done. */
    underWay: { number: number; done: number }[]
    spoiled: { number: number; key: string; reason: string; at: string }[]
    readings: { key: string; number: number; station: string; value: number; at: string; by: string }[]
    workedAt: string
    /** What the minutes planned for a kind of operation are to be multiplied by; absent where nothing was timed. */
    paces?: Partial<Record<OperationKind, number>>
  }
}

/** An invented shop with its boards, jobs and profiles; none of it is anybody’s. */
export interface Demo {
  shop: Record<string, unknown>
  boards: { enteredAt: string; file: Record<string, unknown> }[]
  jobs: DemoJob[]
  profiles: DemoProfile[]
}

const shop = {
  name: 'Hollow Elm Turnery',
  heading: 'Hollow Elm Turnery · turned parts in sets',
  units: 'in',
  currency: 'USD',
  lathes: [
    {
      name: 'Long bed',
      betweenCentres: '52 in',
      swing: '16 in',
      swingOverRest: '12 1/2 in',
      speeds: { steps: [350, 550, 800, 1150, 1650, 2300, 3100] },
      restLength: '14 in',
    },
    {
      name: 'Bench lathe',
      betweenCentres: '20 in',
      swing: '12 in',
      swingOverRest: '9 in',
      speeds: { least: 250, most: 3600 },
      restLength: '6 in',
    },
  ],
  calipers: 4,
  stock: [
    { species: 'cherry-black', nominal: '4/4', pricePerBoardFoot: 7.9 },
    { species: 'cherry-black', nominal: '8/4', pricePerBoardFoot: 9.8 },
    { species: 'cherry-black', nominal: '10/4', pricePerBoardFoot: 11.4 },
    { species: 'cherry-black', nominal: '12/4', pricePerBoardFoot: 12.6 },
    { species: 'maple-sugar', nominal: '6/4', pricePerBoardFoot: 6.7 },
    { species: 'maple-sugar', nominal: '8/4', pricePerBoardFoot: 7.4 },
    { species: 'walnut-black', nominal: '6/4', pricePerBoardFoot: 12.2 },
    { species: 'walnut-black', nominal: '8/4', pricePerBoardFoot: 13.5 },
    { species: '*', nominal: '4/4', pricePerBoardFoot: 8 },
    { species: '*', nominal: '6/4', pricePerBoardFoot: 9 },
    { species: '*', nominal: '8/4', pricePerBoardFoot: 10 },
  ],
  yards: [
    {
      name: 'Alder Ferry Lumber',
      prices: [
        { species: 'cherry-black', nominal: '8/4', grade: 'FAS', pricePerBoardFoot: 9.8 },
        { species: 'cherry-black', nominal: '8/4', grade: '1C', pricePerBoardFoot: 6.4 },
        { species: 'cherry-black', nominal: '10/4', grade: 'FAS', pricePerBoardFoot: 11.4 },
        { species: 'cherry-black', nominal: '10/4', grade: '1C', pricePerBoardFoot: 7.6 },
        { species: 'ash-white', nominal: '8/4', grade: 'FAS', pricePerBoardFoot: 6.9 },
        { species: 'ash-white', nominal: '8/4', grade: '1C', pricePerBoardFoot: 4.7 },
        { species: 'maple-sugar', nominal: '6/4', grade: 'FAS', pricePerBoardFoot: 7.1 },
        { species: 'maple-sugar', nominal: '6/4', grade: '1C', pricePerBoardFoot: 4.9 },
        { species: 'maple-sugar', nominal: '8/4', grade: 'FAS', pricePerBoardFoot: 7.8 },
        { species: 'maple-sugar', nominal: '8/4', grade: '1C', pricePerBoardFoot: 5.3 },
        { species: 'walnut-black', nominal: '8/4', grade: 'FAS', pricePerBoardFoot: 13.2 },
        { species: 'walnut-black', nominal: '8/4', grade: '1C', pricePerBoardFoot: 8.9 },
        { species: '*', nominal: '8/4', grade: 'FAS', pricePerBoardFoot: 10 },
        { species: '*', nominal: '8/4', grade: '1C', pricePerBoardFoot: 6.8 },
      ],
      counts: 'tally',
      measure: 'gross',
      grossOver: 0.08,
      services: [
        { name: 'Surfacing, two sides', per: 'board-foot', price: 0.55 },
        { name: 'Straight-line, one edge', per: 'foot', price: 0.3 },
      ],
      minimumFeet: 0,
      minimumCharge: 75,
    },
  ],
  air: { temperatureC: '66 °F', humidityPct: 45 },
  record: { spoiled: 7, made: 212 },
  labourPerHour: 46,
  marginOnCost: 0.2,
}

const boards = [
  {
    key: 'cherry A',
    species: 'cherry-black',
    units: 'in',
    width: '7 1/4 in',
    length: '8 ft',
    thickness: '2 1/2 in',
    count: 1,
    pricePerBoardFoot: 11.4,
    grade: 'FAS',
    moisture: 8.5,
    heart: { across: '3 1/2 in', below: '4 in' },
    from: 'Sill Creek sawyard, spring load',
    defects: [
      { from: '31 in', to: '33 1/2 in', kind: 'knot' },
      { from: '0 in', to: '8 ft', across: ['6 5/8 in', '7 1/4 in'], kind: 'sap' },
    ],
  },
  {
    key: 'cherry B',
    species: 'cherry-black',
    units: 'in',
    width: '5 in',
    length: '10 ft',
    thickness: '2 1/2 in',
    count: 2,
    pricePerBoardFoot: 11.4,
    moisture: 8,
    heart: { across: '2 1/4 in', below: '3 1/4 in' },
    from: 'Sill Creek sawyard, spring load',
  },
  {
    key: 'ash 1',
    species: 'ash-white',
    units: 'in',
    width: '6 in',
    length: `7' 6"`,
    thickness: '2 1/8 in',
    count: 1,
    price: 44,
    moisture: 12,
    crook: '1/4 in',
    from: 'storm tree behind the shop, sawn two winters ago',
    defects: [
      { from: '0 in', to: '5 in', kind: 'split' },
      { from: '52 in', to: '54 in', across: ['0 in', '1 1/2 in'], kind: 'knot' },
    ],
  },
]

const MM_PER_INCH = 25.4

/** Targets of the stations that are read, mm, as the profiles above have them. */
const targets = {
  tenon: (5 / 8) * MM_PER_INCH,
  belly: (5 / 4) * MM_PER_INCH,
  waist: (7 / 8) * MM_PER_INCH,
  neck: (11 / 16) * MM_PER_INCH,
  seat: 16,
  rim: 34,
}
type Target = keyof typeof targets

/** Steady hands: a few tenths of a millimetre about the target, in no order that a chart would mark. */
const wander = (number: number, place: number): number =>
  (((number * 7 + place * 11) % 13) - 6) * 0.04 + (((number * 5 + place * 3) % 7) - 3) * 0.02

/** Readings that tell a story, as differences from the target in mm; all others wander. */
const told: Record<string, number> = {
  '5 neck': -1.1,
  '9 belly': 1.3,
}

function readings(pieces: number[], stations: Target[], noun: number, at: (n: number) => string, by: string) {
  return pieces.flatMap((number, i) =>
    stations.map((station, j) => {
      const wanders = station === 'tenon' || station === 'seat' ? wander(number, j) / 4 : wander(number, j)
      const value = targets[station] + (told[`${number} ${station}`] ?? wanders)
      return {
        key: key(noun, i * stations.length + j),
        number,
        station,
        value: Math.round(value * 100) / 100,
        at: at(number),
        by,
      }
    }),
  )
}

const from1to = (last: number): number[] => Array.from({ length: last }, (_, i) => i + 1)

/** The demo as it stands at `now` (ISO 8601): two jobs in draft, one under way, one done, and the library. */
export function demo(now: string): Demo {
  const runFrom = (hours: number, minutesEach: number) => (n: number) =>
    before(now, hours - (n * minutesEach) / 60)
  const day = (days: number): string => before(now, -24 * days).slice(0, 10)
  return {
    shop,
    boards: boards.map((file) => ({ file, enteredAt: before(now, 640) })),
    jobs: [
      {
        id: key(1, 3),
        file: { ...knobs, due: day(-2), from: { profile: key(6, 3), revision: 1 } },
        enteredAt: before(now, 420),
        batch: {
          key: key(2, 3),
          sawnKey: key(8, 3),
          startedAt: before(now, 380),
          finished: 24,
          underWay: [],
          spoiled: [],
          readings: readings(from1to(24), ['seat', 'rim'], 0x53, runFrom(370, 12), 'Wren'),
          workedAt: before(now, 340),
          paces: { rough: 0.85, size: 1.1, cove: 1.25, ovolo: 1.1, bead: 1.2, sand: 1.3, finish: 0.9 },
        },
      },
      {
        id: key(1, 2),
        file: { ...balusters, due: day(16), from: { profile: key(6, 1), revision: 3 } },
        enteredAt: before(now, 200),
        batch: {
          key: key(2, 2),
          sawnKey: key(8, 2),
          startedAt: before(now, 96),
          finished: 14,
          underWay: [
            { number: 15, done: 0.8 },
            { number: 16, done: 0.55 },
            { number: 17, done: 0.3 },
            { number: 18, done: 0.3 },
          ],
          spoiled: [
            {
              number: 7,
              key: key(4, 7),
              reason: 'Tear-out at the neck, found when sanding',
              at: before(now, 40),
            },
          ],
          readings: readings(
            [1, 2, 3, 4, 5, 6, 8, 9, 10, 11, 12, 13, 14],
            ['tenon', 'belly', 'waist', 'neck'],
            0x52,
            runFrom(60, 28),
            'Wren',
          ),
          workedAt: before(now, 20),
        },
      },
      { id: key(1, 1), file: { ...legs, due: day(30) }, enteredAt: before(now, 30) },
      { id: key(1, 4), file: { ...posts, due: day(44) }, enteredAt: before(now, 26) },
    ],
    profiles: library(now),
  }
}
