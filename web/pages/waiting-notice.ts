import { html, nothing, type TemplateResult } from 'lit'
import '../elements/outbox-notice.ts'
import type { Piece } from '../../shared/piece.ts'
import type { Plan } from '../../shared/plan.ts'
import { checkName } from '../elements/operation-words.ts'
import type { WaitingLine } from '../elements/outbox-notice.ts'
import { readingText } from '../elements/verdict-words.ts'
import { outbox, type Sending } from '../outbox.ts'
import { lengthStyle } from '../session.ts'

/** What a job's entries are called and shown in. */
interface Naming {
  pieces: readonly Piece[]
  plan: Pick<Plan, 'job' | 'operations' | 'checkStations'>
}

const pieceName = (id: string, { pieces }: Naming): string => {
  const piece = pieces.find((known) => known.id === id)
  return piece ? `piece ${piece.number}` : 'a piece'
}

function sendingText(sending: Sending, naming: Naming): string {
  const { plan } = naming
  switch (sending.kind) {
    case 'reading': {
      const { piece, station, stage, value, values } = sending.body
      const read = (values ?? [value]).map((v) =>
        typeof v === 'number' ? readingText(v, lengthStyle(plan.job.units)) : v,
      )
      const check = plan.checkStations.find(({ key }) => key === station)
      const where = check ? checkName(check, plan.job.profile) : station
      return `Reading ${read.join(' and ')} of ${pieceName(piece, naming)} at ${where}, ${stage ?? 'sanded'}`
    }
    case 'step': {
      const operation = plan.operations.find(({ key }) => key === sending.body.operation)
      return `“${operation?.name ?? sending.body.operation}” done on ${pieceName(sending.piece, naming)}`
    }
    case 'board':
      return `Board ${sending.body.key}`
    case 'touch-up':
      return `The edge of the ${sending.body.tool} brought back`
    case 'weighing':
      return `Weighing of piece ${sending.body.number}`
    case 'spoil':
      return `Spoiled: ${pieceName(sending.piece, naming)}, ${sending.body.reason}`
  }
}

/** What of a job is not stored yet, with the ways to send it or take it out; nothing when all is. */
export function waitingNotice(naming: Naming, jobId: string): TemplateResult | typeof nothing {
  const box = outbox()
  const lines = box.waiting(jobId).map(({ sending, refused }): WaitingLine => {
    const line = { key: sending.body.key, text: sendingText(sending, naming) }
    return refused === undefined ? line : { ...line, refused }
  })
  if (lines.length === 0) return nothing
  return html`<outbox-notice
    .lines=${lines}
    .keeps=${box.keeps}
    @send-now=${() => void box.flush()}
    @take-out=${(event: CustomEvent<{ key: string }>) => box.drop(event.detail.key)}
  ></outbox-notice>`
}
