import type { JobState } from '../../shared/contract/job.ts'
import type { PhotoType } from '../../shared/contract/photo.ts'
import type { ReadingKind, ReadingStage, Verdict } from '../../shared/matching/reading.ts'
import type { TouchUp } from '../../shared/piece.ts'

/** Flags as 0 and 1, times as ISO text in UTC, documents as JSON text. */
export interface Tables {
  jobs: {
    id: string
    revision: number
    /** The job file as it was entered. */
    file: string
    name: string
    state: JobState
    created_at: string
    updated_at: string
    /** Set when the job was deleted: it is hidden, nothing of it is lost. */
    deleted_at: string | null
  }
  plans: {
    id: string
    job_id: string
    job_revision: number
    made_at: string
    /** Version of the program that made it. */
    version: string
    plan: string
    /** Job file, shop and wood that it was made from. */
    inputs: string
  }
  batches: { id: string; job_id: string; plan_id: string; started_at: string }
  pieces: {
    id: string
    batch_id: string
    job_id: string
    number: number
    spare: 0 | 1
    spoiled_reason: string | null
    spoiled_at: string | null
  }
  steps: {
    key: string
    piece_id: string
    job_id: string
    operation: string
    minutes: number | null
    by: string | null
    at: string
    stored_at: string
    /** Set when the entry was taken back: it counts no more, and is kept. */
    taken_back_at: string | null
  }
  readings: {
    key: string
    piece_id: string
    job_id: string
    station: string
    kind: ReadingKind
    stage: ReadingStage
    value_mm: number
    values_mm: string
    out_of_round_mm: number | null
    target_mm: number
    verdict: Verdict
    at: string
    stored_at: string
    sequence: number
    by: string | null
    instrument: string | null
    taken_back_at: string | null
  }
  /** Edges brought back during a batch. */
  touch_ups: {
    key: string
    job_id: string
    tool: string
    kind: TouchUp['kind']
    by: string | null
    at: string
    stored_at: string
    taken_back_at: string | null
  }
  /** Wood weighed or metered while it dries. */
  weighings: {
    key: string
    job_id: string
    number: number
    grams: number | null
    moisture: number | null
    by: string | null
    at: string
    stored_at: string
    taken_back_at: string | null
  }
  shops: { id: 'shop'; revision: number; file: string; updated_at: string }
  boards: { key: string; file: string; created_at: string; updated_at: string }
  /** Boards of the rack that a started batch is cut from, until it is sawn. */
  reserved_boards: { job_id: string; board_key: string; count: number }
  /** Batches that are sawn: what went off the rack, and the offcuts that came onto it. */
  sawn_batches: { job_id: string; key: string; at: string; boards: string; offcuts: string }
  profiles: {
    id: string
    /** The version that holds now. */
    revision: number
    created_at: string
    /** Set when the profile was deleted: it is hidden, nothing of it is lost. */
    deleted_at: string | null
  }
  /** Every version of a profile as it was entered. */
  profile_versions: { profile_id: string; revision: number; file: string; at: string }
  profile_photos: { profile_id: string; type: PhotoType; image: Buffer; stored_at: string }
  used_keys: { noun: string; key: string; body_hash: string; answer: string; used_at: string }
}
