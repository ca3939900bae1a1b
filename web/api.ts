import type { HeldBoard, RackBoard } from '../shared/contract/board.ts'
import type { Change } from '../shared/contract/change.ts'
import type { JobMatch } from '../shared/contract/match.ts'
import type { Lumber } from '../shared/lumber.ts'
import type { ReadingKind, ReadingStage } from '../shared/matching/reading.ts'
import type { Piece, Step, StoredReading, TouchUp, Weighing } from '../shared/piece.ts'
import type { Plan } from '../shared/plan.ts'
import type { Breach } from '../shared/problem.ts'
import type { Shop } from '../shared/shop.ts'
import type { Species } from '../shared/wood/species.ts'
import type { JobFile, StoredJob } from './job-file.ts'
import { DEFAULT_ROLL, session } from './session.ts'

/** What the server refused, with the fields it named; status 0 when it could not be reached. */
export class Refusal extends Error {
  readonly status: number
  readonly errors: Breach[]
  /** The name of the refusal in the catalogue, e.g. `key-reused`; empty without an answer. */
  readonly code: string

  constructor(status: number, message: string, errors: Breach[] = [], code = '') {
    super(message)
    this.name = 'Refusal'
    this.status = status
    this.errors = errors
    this.code = code
  }
}

/** Whether trying again may help: no answer or one nobody can read, a busy server, a failure of its own. */
export const isAway = (failure: unknown): boolean =>
  !(failure instanceof Refusal) || failure.status === 0 || failure.status === 429 || failure.status >= 500

interface Ask {
  method?: string
  body?: unknown
  ifMatch?: number
}

interface Answered<T> {
  value: T
  /** What stands in the ETag; 0 without one. */
  revision: number
}

/** The one place that talks to the server. */
async function answered<T>(path: string, { method = 'GET', body, ifMatch }: Ask = {}): Promise<Answered<T>> {
  const headers: Record<string, string> = { accept: 'application/json' }
  if (body !== undefined) headers['content-type'] = 'application/json'
  if (ifMatch !== undefined) headers['if-match'] = `"${ifMatch}"`
  let answer: Response
  try {
    answer = await fetch(`/api${path}`, {
      method,
      headers,
      body: body === undefined ? null : JSON.stringify(body),
    })
  } catch {
    throw new Refusal(
      0,
      'The server cannot be reached. What you entered is still here; try again when it is back.',
    )
  }
  if (!answer.ok) throw await refusalOf(answer)
  const revision = Number(answer.headers.get('etag')?.replace(/\D/g, '') || 0)
  return { value: answer.status === 204 ? (undefined as T) : ((await answer.json()) as T), revision }
}

/** Asks for what the answer holds. */
export const ask = async <T>(path: string, how: Ask = {}): Promise<T> => (await answered<T>(path, how)).value

async function refusalOf(answer: Response): Promise<Refusal> {
  try {
    const told = (await answer.json()) as {
      type?: string
      title?: string
      detail?: string
      errors?: Breach[]
    }
    const code = told.type?.split('/').at(-1)
    return new Refusal(answer.status, told.detail ?? told.title ?? answer.statusText, told.errors ?? [], code)
  } catch {
    return new Refusal(answer.status, `The server answered ${answer.status} ${answer.statusText}`)
  }
}

/** A key for something new (UUID, version 4); works on plain HTTP too, where `randomUUID` is missing. */
export function newKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16))
  bytes[6] = (bytes[6]! & 0x0f) | 0x40
  bytes[8] = (bytes[8]! & 0x3f) | 0x80
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})/, '$1-$2-$3-$4-')
}

/** Where a job is asked about. */
export const job = (id: string) => `/jobs/${encodeURIComponent(id)}`
const piece = (id: string) => `/pieces/${encodeURIComponent(id)}`

/** A reading as it is sent: the piece by its id, lengths as written or in mm. */
export interface NewReading {
  key: string
  piece: string
  station: string
  kind?: ReadingKind
  stage?: ReadingStage
  value?: number | string
  values?: (number | string)[]
  at: string
  by?: string
  instrument?: string
}

export const jobs = () => ask<StoredJob[]>('/jobs')
export const storedJob = (id: string) => ask<StoredJob>(job(id))
export const addJob = (file: JobFile & { key: string }) =>
  ask<StoredJob>('/jobs', { method: 'POST', body: file })
export const changeJob = (id: string, revision: number, file: JobFile) =>
  ask<StoredJob>(job(id), { method: 'PUT', body: file, ifMatch: revision })
export const deleteJob = (id: string, revision: number) =>
  ask<void>(job(id), { method: 'DELETE', ifMatch: revision })

export const planOf = (jobId: string) => ask<Plan>(`${job(jobId)}/plan`)
export const startJob = (jobId: string, key: string) =>
  ask<unknown>(`${job(jobId)}/start`, { method: 'POST', body: { key } })
export const piecesOf = (jobId: string) => ask<Piece[]>(`${job(jobId)}/pieces`)
export const logStep = (pieceId: string, step: Omit<Step, 'piece'>) =>
  ask<Step>(`${piece(pieceId)}/steps`, { method: 'POST', body: step })
export const spoilPiece = (pieceId: string, spoil: { key: string; reason: string }) =>
  ask<Piece>(`${piece(pieceId)}/spoil`, { method: 'POST', body: spoil })
/** A note of the floor of a batch: an edge brought back, a piece weighed. */
export const tellFloor = (jobId: string, notes: string, body: object) =>
  ask<TouchUp | Weighing>(`${job(jobId)}/${notes}`, { method: 'POST', body })
export const addReading = (jobId: string, reading: NewReading) =>
  ask<StoredReading>(`${job(jobId)}/checks`, { method: 'POST', body: reading })
export const matchOf = (jobId: string, stage?: ReadingStage) =>
  ask<JobMatch>(`${job(jobId)}/match${stage ? `?stage=${stage}` : ''}`)

export type Print =
  | 'pattern.pdf'
  | 'pattern.svg'
  | 'story-stick.pdf'
  | 'cut-list.pdf'
  | 'caliper-card.pdf'
  | 'gauges.pdf'
  | 'work-order.pdf'
  | 'labels.pdf'
  | 'quote.pdf' // prettier-ignore

/** What is drawn at true size goes on a roll; everything else on the shop’s own sheets. */
const onRoll: Print[] = ['pattern.pdf', 'story-stick.pdf', 'gauges.pdf']

/** How a print is asked for: the way of writing lengths and the paper the person has chosen. */
export function asChosen(print: Print): string {
  const { style, paper: chosen, rollWidth = DEFAULT_ROLL } = session()
  const paper = chosen === 'roll' && !onRoll.includes(print) ? undefined : chosen
  const asked = new URLSearchParams({
    ...(style && { style }),
    ...(paper && { paper }),
    ...(paper === 'roll' && { width: rollWidth }),
  })
  return asked.size > 0 ? `?${asked}` : ''
}

/** The address of a print of a job. */
export const printPath = (jobId: string, print: Print): string =>
  `/api${job(jobId)}/prints/${print}${asChosen(print)}`

/** What to buy for these jobs together, by the terms of a yard; lengths in messages as the person has chosen. */
export const lumber = (jobIds: readonly string[], yard?: string) =>
  ask<Lumber>(`/lumber?${lumberQuery(jobIds, yard)}`)
/** The address of that as a print. */
export const lumberPrintPath = (jobIds: readonly string[], yard?: string): string =>
  `/api/lumber/prints/yard-list.pdf?${lumberQuery(jobIds, yard)}${sheetChosen()}`

function lumberQuery(jobIds: readonly string[], yard?: string): string {
  const { style } = session()
  return String(
    new URLSearchParams({ jobs: jobIds.join(','), ...(yard && { yard }), ...(style && { style }) }),
  )
}

/** The sheet the person has chosen; words do not go on a roll. */
function sheetChosen(): string {
  const { paper } = session()
  return paper && paper !== 'roll' ? `&paper=${paper}` : ''
}

export const shop = () => ask<Shop>('/shop')
/** The settings with the revision they stand at. */
export const shopSettings = () => answered<Shop>('/shop')
export const changeShop = (settings: unknown, revision?: number) =>
  answered<Shop>('/shop', {
    method: 'PUT',
    body: settings,
    ...(revision !== undefined && { ifMatch: revision }),
  })
export const species = () => ask<Species[]>('/species')
/** Every board on the rack, with the batches that have it reserved. */
export const boards = () => ask<HeldBoard[]>('/boards')
export const addBoard = (board: Record<string, unknown> & { key: string }) =>
  ask<RackBoard>('/boards', { method: 'POST', body: board })
const changeListeners = new Set<(change: Change) => void>()
let source: EventSource | undefined

/** Tells when something was changed, here or on another device; returns the way to stop listening. */
export function onChange(listener: (change: Change) => void): () => void {
  changeListeners.add(listener)
  if (!source) {
    source = new EventSource('/api/events')
    source.addEventListener('change', (event) => {
      for (const each of changeListeners) each(JSON.parse(event.data) as Change)
    })
  }
  return () => {
    changeListeners.delete(listener)
    if (changeListeners.size === 0) {
      source?.close()
      source = undefined
    }
  }
}

export const stepsOf = (pieceId: string) => ask<Step[]>(`${piece(pieceId)}/steps`)
/** Takes a logged step back; the piece waits for its operation again. */
export const takeBackStep = (pieceId: string, key: string) =>
  ask<void>(`${piece(pieceId)}/steps/${encodeURIComponent(key)}`, { method: 'DELETE' })
export const readingsOf = (jobId: string) => ask<StoredReading[]>(`${job(jobId)}/checks`)
/** Takes a reading back; the one before it, if any, counts again. */
export const takeBackReading = (jobId: string, key: string) =>
  ask<void>(`${job(jobId)}/checks/${encodeURIComponent(key)}`, { method: 'DELETE' })
