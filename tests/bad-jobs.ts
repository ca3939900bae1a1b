import { benchLeg, dowel } from './jobs.ts'

/** A broken job file: what is wrong with it, the file, and the field its refusal must name. */
export interface BadJob {
  what: string
  file: unknown
  path: RegExp
  /** Something the message must say: what was read, or the remedy. */
  says?: RegExp
}

type Station = Record<string, unknown>

const leg = (change: (job: any) => void): unknown => {
  const job = benchLeg()
  change(job)
  return job
}

const profile = (list: Station[]): unknown => ({ ...dowel(), profile: { stations: list } })
const stations = (...list: Station[]): unknown => profile(list)

const ends = (d: unknown = 30): [Station, Station] => [
  { at: 0, diameter: d },
  { at: 400, diameter: d },
]

export const badJobs: BadJob[] = [
  { what: 'nothing but a list', file: [], path: /^$|^units$|^name$/ },
  { what: 'null', file: null, path: /^$|^name$/ },
  { what: 'an empty object', file: {}, path: /^name$/ },
  { what: 'no name', file: leg((j) => delete j.name), path: /^name$/ },
  { what: 'a blank name', file: leg((j) => (j.name = '   ')), path: /^name$/ },
  {
    what: 'an unknown system of units',
    file: leg((j) => (j.units = 'furlong')),
    path: /^units$/,
    says: /"in" or "mm"/,
  },
  { what: 'a quantity of none', file: leg((j) => (j.quantity = 0)), path: /^quantity$/, says: /read 0/ },
  { what: 'a negative quantity', file: leg((j) => (j.quantity = -4)), path: /^quantity$/, says: /read -4/ },
  { what: 'half a piece', file: leg((j) => (j.quantity = 2.5)), path: /^quantity$/, says: /whole/ },
  { what: 'too many pieces', file: leg((j) => (j.quantity = 10_001)), path: /^quantity$/, says: /10000/ },
  {
    what: 'a quantity in words',
    file: leg((j) => (j.quantity = 'four')),
    path: /^quantity$/,
    says: /"four"/,
  },
  { what: 'impossible moisture', file: leg((j) => (j.moisture = 250)), path: /^moisture$/, says: /200/ },
  { what: 'negative moisture', file: leg((j) => (j.serviceMoisture = -1)), path: /^serviceMoisture$/ },
  {
    what: 'a day that does not exist',
    file: leg((j) => (j.due = '2027-02-30')),
    path: /^due$/,
    says: /2027-02-30/,
  },
  { what: 'an unknown mount', file: leg((j) => (j.mount = 'glue')), path: /^mount$/, says: /"spur"/ },
  { what: 'an unknown grain', file: leg((j) => (j.grain = 'wavy')), path: /^grain$/ },
  { what: 'no parts on a blank', file: leg((j) => (j.perBlank = 0)), path: /^perBlank$/ },
  {
    what: 'a split that is neither true nor false',
    file: leg((j) => (j.profile.split = 'yes')),
    path: /^profile\.split$/,
  },
  { what: 'no profile', file: leg((j) => delete j.profile), path: /^profile$/ },
  {
    what: 'stations that are no list',
    file: leg((j) => (j.profile.stations = 'many')),
    path: /^profile\.stations$/,
  },
  { what: 'one station', file: stations({ at: 0, diameter: 30 }), path: /^profile\.stations$/, says: /2/ },
  {
    what: 'too many stations',
    file: profile(Array.from({ length: 2001 }, (_, i) => ({ at: i, diameter: 30 }))),
    path: /^profile\.stations$/,
    says: /2000/,
  },
  {
    what: 'a million stations',
    file: profile(Array.from({ length: 1_000_000 }, (_, at) => ({ at }))),
    path: /^profile\.stations$/,
    says: /1000000/,
  },
  {
    what: 'an unknown shape',
    file: stations({ at: 0, diameter: 30, then: 'wiggle' }, { at: 400, diameter: 30 }),
    path: /^profile\.stations\[0\]\.then$/,
    says: /"wiggle"/,
  },
  {
    what: 'stations out of order',
    file: stations({ at: 0, diameter: 30 }, { at: 300, diameter: 30 }, { at: 200, diameter: 30 }),
    path: /^profile\.stations\[2\]\.at$/,
  },
  {
    what: 'three stations at one position',
    file: stations(
      { at: 0, diameter: 30 },
      { at: 100, diameter: 30 },
      { at: 100, diameter: 20 },
      { at: 100, diameter: 25 },
      { at: 200, diameter: 25 },
    ),
    path: /^profile\.stations\[3\]\.at$/,
  },
  {
    what: 'a shape before a step',
    file: stations(
      { at: 0, diameter: 30 },
      { at: 100, diameter: 30, then: 'bead' },
      { at: 100, diameter: 20 },
      { at: 200, diameter: 25 },
    ),
    path: /^profile\.stations\[1\]\.then$/,
  },
  {
    what: 'a station below the foot',
    file: stations({ at: -10, diameter: 30 }, { at: 400, diameter: 30 }),
    path: /^profile\.stations\[0\]\.at$/,
  },
  {
    what: 'no position',
    file: stations({ diameter: 30 }, { at: 400, diameter: 30 }),
    path: /^profile\.stations\[0\]\.at$/,
  },
  {
    what: 'a missing diameter',
    file: stations({ at: 0, diameter: 30 }, { at: 200 }, { at: 400, diameter: 30 }),
    path: /^profile\.stations\[1\]\.diameter$/,
  },
  {
    what: 'no diameter at the end',
    file: stations({ at: 0, diameter: 30 }, { at: 400 }),
    path: /^profile\.stations\[1\]\.diameter$/,
  },
  { what: 'a diameter of nothing', file: stations(...ends(0)), path: /^profile\.stations\[0\]\.diameter$/ },
  { what: 'a negative diameter', file: stations(...ends(-12)), path: /^profile\.stations\[0\]\.diameter$/ },
  {
    what: 'NaN as text',
    file: stations(...ends('NaN')),
    path: /^profile\.stations\[0\]\.diameter$/,
    says: /"NaN"/,
  },
  {
    what: 'a length in an unknown unit',
    file: stations(...ends('3 furlongs')),
    path: /^profile\.stations\[0\]\.diameter$/,
    says: /3 furlongs/,
  },
  {
    what: 'comma and point together',
    file: stations(...ends('1.234,5 mm')),
    path: /^profile\.stations\[0\]\.diameter$/,
    says: /1\.234,5/,
  },
  {
    what: 'a fraction over nothing',
    file: stations(...ends('1/0')),
    path: /^profile\.stations\[0\]\.diameter$/,
  },
  {
    what: 'a cove deeper than half its width',
    file: stations({ at: 0, diameter: 30, then: 'cove', depth: 6 }, { at: 10, diameter: 30 }),
    path: /^profile\.stations\[0\]\.depth$/,
  },
  {
    what: 'a cove through the axis',
    file: stations({ at: 0, diameter: 10, then: 'cove' }, { at: 40, diameter: 10 }),
    path: /^profile\.stations\[0\]\.(depth|then)$/,
  },
  {
    what: 'a bead higher than half its width',
    file: stations({ at: 0, diameter: 30, then: 'bead', rise: 5.1 }, { at: 10, diameter: 30 }),
    path: /^profile\.stations\[0\]\.rise$/,
  },
  {
    what: 'a square without its side',
    file: leg((j) => delete j.profile.stations[3].side),
    path: /^profile\.stations\[3\]\.side$/,
  },
  {
    what: 'a square smaller than the round',
    file: leg((j) => (j.profile.stations[3].side = '1 3/4')),
    path: /^profile\.stations\[3\]\.(side|diameter)$/,
  },
  {
    what: 'a bead standing out of the square',
    file: leg((j) =>
      j.profile.stations.splice(
        1,
        2,
        { at: '1 1/4', diameter: '2 1/8', then: 'bead', rise: '1/4' },
        { at: '1 3/4', diameter: '2 1/8' },
      ),
    ),
    path: /^profile\.stations\[1\]/,
  },
  {
    what: 'a part longer than 20 m',
    file: stations({ at: 0, diameter: 30 }, { at: '20001 mm', diameter: 30 }),
    path: /^profile\.stations\[1\]\.at$/,
  },
  {
    what: 'a part thicker than 1 m',
    file: stations(...ends(1001)),
    path: /^profile\.stations\[0\]\.diameter$/,
  },
  {
    what: 'two stations of one key',
    file: stations(
      { at: 0, diameter: 30, key: 'a' },
      { at: 200, diameter: 30, key: 'a' },
      { at: 400, diameter: 30 },
    ),
    path: /^profile\.stations\[1\]\.key$/,
  },
  {
    what: 'an unknown shoulder',
    file: leg((j) => (j.profile.stations[3].shoulder = 'sharp')),
    path: /^profile\.stations\[3\]\.shoulder$/,
  },
  {
    what: 'a negative tolerance',
    file: leg((j) => (j.tolerance = { diameter: -1 })),
    path: /^tolerance\.diameter$/,
  },
  {
    what: 'a negative allowance',
    file: leg((j) => (j.allowances = { endWaste: '-1/2' })),
    path: /^allowances\.endWaste$/,
  },
  {
    what: 'an unknown joint',
    file: leg((j) => (j.joints[0].kind = 'dovetail')),
    path: /^joints\[0\]\.kind$/,
  },
  {
    what: 'a face that is none',
    file: leg((j) => (j.joints[0].face = 'E')),
    path: /^joints\[0\]\.face$/,
    says: /"A"/,
  },
  { what: 'a joint beyond the end', file: leg((j) => (j.joints[0].at = '20')), path: /^joints\[0\]\.at$/ },
  {
    what: 'a stair that is a number',
    file: leg((j) => (j.stair = 4)),
    path: /^stair$/,
    says: /read 4/,
  },
  {
    what: 'a run that is no length',
    file: leg((j) => (j.stair = { run: 'long' })),
    path: /^stair\.run$/,
    says: /"long"/,
  },
  {
    what: 'a run as long as a street',
    file: leg((j) => (j.stair = { run: '101 m' })),
    path: /^stair\.run$/,
    says: /between 1 and 100000 mm; read "101 m"/,
  },
  {
    what: 'a load that lifts a lorry',
    file: leg((j) => (j.stair = { load: '21 kN' })),
    path: /^stair\.load$/,
    says: /at most 20000 N; read "21 kN"/,
  },
  {
    what: 'a ball of nothing',
    file: leg((j) => (j.stair = { gap: 0 })),
    path: /^stair\.gap$/,
    says: /between 1 and 1000 mm; read 0/,
  },
  {
    what: 'a load in kilograms',
    file: leg((j) => (j.stair = { load: '23 kg' })),
    path: /^stair\.load$/,
    says: /no force .* "222 N"/,
  },
  {
    what: 'a load of none',
    file: leg((j) => (j.stair = { load: 0 })),
    path: /^stair\.load$/,
    says: /more than 0 .* read 0/,
  },
  {
    what: 'rails the wrong way round',
    file: leg((j) => (j.stair = { between: ['12', '3'] })),
    path: /^stair\.between$/,
    says: /the lower first, .*304\.8 mm/,
  },
  {
    what: 'a rail above the part',
    file: leg((j) => (j.stair = { between: ['3', '20'] })),
    path: /^stair\.between$/,
    says: /419\.1 mm/,
  },
  {
    what: 'one rail only',
    file: leg((j) => (j.stair = { between: ['3'] })),
    path: /^stair\.between$/,
    says: /two lengths/,
  },
  {
    what: 'hands that are neither',
    file: leg((j) => (j.mirrored = 'both')),
    path: /^mirrored$/,
    says: /true or false; read "both"/,
  },
  { what: 'a lot without a name', file: leg((j) => (j.lot = '  ')), path: /^lot$/, says: /empty/ },
  {
    what: 'an object where a length belongs',
    file: stations(...ends({})),
    path: /^profile\.stations\[0\]\.diameter$/,
  },
] // prettier-ignore

/** Files that are no job at all. */
export const badTexts: { what: string; text: () => string }[] = [
  { what: 'an empty file', text: () => '' },
  { what: 'a file of blanks', text: () => '  \n ' },
  { what: 'text that is no JSON', text: () => 'four legs, walnut' },
  { what: 'a cut-off file', text: () => '{ "name": "Legs", "profile": {' },
  { what: 'NaN as a number', text: () => '{ "name": "Legs", "quantity": NaN }' },
  { what: '50 MB', text: () => `{"name":"${'x'.repeat(50_000_000)}"}` },
  { what: 'a deep nest', text: () => '['.repeat(200_000) },
]
