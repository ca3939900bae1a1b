import type { Plan } from '../../shared/plan.ts'
import type { Shop } from '../../shared/shop.ts'
import type { EnteredStation, JobFile } from '../../web/job-file.ts'

type Ask = <T>(path: string, body?: unknown) => Promise<T>

/** A plain stick of ash, 20 in long and 2 in thick, with a station at its middle. */
export const stick: JobFile = {
  name: 'Plain sticks',
  units: 'in',
  species: 'ash-white',
  quantity: 4,
  profile: {
    stations: [
      { at: '0', diameter: '2' },
      { at: '10', diameter: '2', name: 'middle' },
      { at: '20', diameter: '2' },
    ],
  },
}

const square: EnteredStation[] = [
  { at: '0', diameter: '1 1/8' },
  { at: '5', diameter: '1 1/2', then: 'square', side: '1 3/4', shoulder: 'rounded' },
  { at: '9', diameter: '1 1/2' },
  { at: '19', diameter: '1' },
]

export type Way = 'plain' | 'split' | 'mirrored' | 'knobs' | 'stair' | 'moving' | 'limp' | 'unknown'

/** One job for every way a part can be made. */
export const waysToMake: Record<Way, JobFile> = {
  plain: stick,
  split: { ...stick, name: 'Half columns', profile: { ...stick.profile, split: true } },
  mirrored: {
    ...stick,
    name: 'Arm posts',
    mirrored: true,
    profile: { stations: square },
    joints: [
      { kind: 'mortise', at: '7 1/2', face: 'A', size: ['3/8', '1 3/4'], depth: '3/4' },
      { kind: 'mortise', at: '6 1/2', face: 'B', size: ['3/8', '1 3/4'], depth: '3/4' },
    ],
  },
  knobs: {
    name: 'Knobs',
    units: 'mm',
    species: 'walnut-black',
    quantity: 12,
    mount: 'chuck',
    perBlank: 3,
    profile: {
      stations: [
        { at: '0', diameter: '16', then: 'ogee' },
        { at: '20', diameter: '34', then: 'ovolo' },
        { at: '30', diameter: '14' },
      ],
    },
  },
  stair: {
    ...stick,
    name: 'Stair balusters',
    use: 'stair',
    quantity: 30,
    stair: { run: '100' },
    profile: {
      stations: [
        { at: '0', diameter: '5/8', tenon: true },
        { at: '1', diameter: '5/8' },
        { at: '1', diameter: '1 1/4' },
        { at: '33', diameter: '7/8' },
      ],
    },
  },
  moving: { ...stick, name: 'Sticks for the garden', serviceMoisture: 14 },
  limp: { ...stick, name: 'Plum sticks', species: 'orchard-plum' },
  unknown: { ...stick, name: 'Pear sticks', species: 'orchard-pear' },
}

/** Stores a job and gives its id. */
export async function addJob(ask: Ask, file: JobFile): Promise<string> {
  const key = crypto.randomUUID()
  await ask('/api/jobs', { key, ...file })
  return key
}

/** Starts the batch of a job. */
export const start = (ask: Ask, id: string) =>
  ask<unknown>(`/api/jobs/${id}/start`, { key: crypto.randomUUID() })

export const planOf = (ask: Ask, id: string) => ask<Plan>(`/api/jobs/${id}/plan`)

/** Changes some of the shop’s settings. */
export async function changeShop(address: string, change: Partial<Shop>): Promise<void> {
  const shop = (await (await fetch(`${address}/api/shop`)).json()) as Shop
  const answer = await fetch(`${address}/api/shop`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ ...shop, ...change }),
  })
  if (!answer.ok) throw new Error(await answer.text())
}

/** Woods of the shop’s own: one of which nothing is known but its name, one that was weighed and never bent. */
export const ownWoods: Shop['species'] = ['pear', 'plum'].map((name) => ({
  key: `orchard-${name}`,
  name: `Orchard ${name}`,
  ...(name === 'plum' && { sg12: 0.7 }),
  kind: 'hardwood',
  source: 'the shop’s own',
  confidence: 'shop',
  safe: false,
}))
