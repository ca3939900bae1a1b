import { html, nothing, type TemplateResult } from 'lit'
import '../elements/outbox-notice.ts'
import type { WaitingLine } from '../elements/outbox-notice.ts'
import { outbox, type Sending, type Waiting } from '../outbox.ts'

const pieceName = (id: string, numbers: Readonly<Record<string, number>>): string =>
  numbers[id] === undefined ? 'a piece' : `piece ${numbers[id]}`

function sendingText(sending: Sending, numbers: Readonly<Record<string, number>>): string {
  switch (sending.kind) {
    case 'reading': {
      const { piece, station, stage, value, values } = sending.body
      return `Reading ${(values ?? [value]).map((v) => (typeof v === 'number' ? `${Math.round(v * 1000) / 1000} mm` : v)).join(' and ')} of ${pieceName(piece, numbers)} at ${station}, ${stage ?? 'sanded'}`
    }
    case 'step':
      return `“${sending.body.operation}” done on ${pieceName(sending.piece, numbers)}`
    case 'spoil':
      return `${pieceName(sending.piece, numbers)} spoiled: ${sending.body.reason}`
  }
}

/** What waits in the outbox, in words; `numbers` gives each piece's number by its id. */
export const waitingLines = (
  waiting: readonly Waiting[],
  numbers: Readonly<Record<string, number>>,
): WaitingLine[] =>
  waiting.map(({ sending, refused }) => ({
    key: sending.body.key,
    text: sendingText(sending, numbers),
    ...(refused !== undefined && { refused }),
  }))

/** What of a job is not stored yet, with the ways to send it or take it out; nothing when all is. */
export function waitingNotice(
  jobId: string,
  numbers: Readonly<Record<string, number>>,
): TemplateResult | typeof nothing {
  const box = outbox()
  const waiting = box.waiting(jobId)
  if (waiting.length === 0) return nothing
  return html`<outbox-notice
    .lines=${waitingLines(waiting, numbers)}
    .keeps=${box.keeps}
    @send-now=${() => void box.flush()}
    @take-out=${(event: CustomEvent<{ key: string }>) => box.drop(event.detail.key)}
  ></outbox-notice>`
}
