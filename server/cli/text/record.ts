import { type BatchTimes, percentOver } from '../../../shared/estimate/planned-actual.ts'
import type { KindRecord, ShopRecord } from '../../../shared/estimate/record.ts'
import { countText, minutesText } from '../../prints/figures.ts'
import { heading, pairs, paragraph, table, wrapped } from './page.ts'

/** How far the actual is from the planned: `+12 %`. */
function overText(planned: number, actual: number): string {
  const percent = percentOver(planned, actual)
  if (percent === undefined) return ''
  return `${percent > 0 ? '+' : ''}${percent} %`
}

/** Planned against actual of a batch, for a person; minutes of the pieces whose time is known. */
export function batchTimesText(name: string, times: BatchTimes): string {
  const { operations, done, timed, planned, actual } = times
  const logged = operations.filter((operation) => operation.done > 0)
  const none = 'No minutes are logged on this batch yet: there is nothing to set against the plan.'
  const columns = [
    { head: 'operation', width: 33 },
    { head: 'pieces', width: 6, align: 'right' as const },
    { head: 'timed', width: 5, align: 'right' as const },
    { head: 'planned min', width: 8, align: 'right' as const },
    { head: 'actual min', width: 8, align: 'right' as const },
    { head: 'over', width: 7, align: 'right' as const },
  ]
  const rows = logged.map((operation) => ({
    cells: [
      operation.name,
      String(operation.done),
      String(operation.timed),
      operation.timed > 0 ? operation.planned.toFixed(1) : '',
      operation.timed > 0 ? operation.actual.toFixed(1) : '',
      overText(operation.planned, operation.actual),
    ],
    ...(operation.setAside > 0 && {
      caution: `${countText(operation.setAside, 'time')} so far from the others that the shop’s factors leave it aside`,
    }),
  }))
  const lines = [
    ...wrapped(name.toUpperCase()),
    ...heading('Planned against actual'),
    ...(timed === 0
      ? paragraph(none)
      : pairs([
          ['timed', `${countText(timed, 'time')} of ${countText(done, 'step')} logged`],
          ['planned', minutesText(planned)],
          ['actual', `${minutesText(actual)}, ${overText(planned, actual)}`],
        ])),
    ...(logged.length > 0 ? ['', ...table(columns, rows)] : []),
  ]
  return `${lines.join('\n')}\n`
}

const factorText = (factor: number): string => factor.toFixed(2)

/** What the shop's own times say, for a person. */
export function shopRecordText(record: ShopRecord): string {
  const { batches, times, setAside, overall, spread } = record
  const columns = [
    { head: 'kind of operation', width: 20 },
    { head: 'set', width: 7, align: 'right' as const },
    { head: 'by times alone', width: 10, align: 'right' as const },
    { head: 'planned by', width: 10, align: 'right' as const },
    { head: 'batches', width: 7, align: 'right' as const },
    { head: 'times', width: 7, align: 'right' as const },
    { head: 'aside', width: 7, align: 'right' as const },
  ]
  const rows = (Object.entries(record.kinds) as [string, KindRecord][]).map(([kind, own]) => ({
    cells: [
      kind.replaceAll('-', ' '),
      factorText(own.default),
      factorText(own.own),
      factorText(own.factor),
      String(own.batches),
      String(own.times),
      String(own.setAside),
    ],
  }))
  const none = 'No minutes are logged yet: plans go by usual figures and by what is set for the shop.'
  const lines = [
    ...heading('What the shop’s own times say'),
    ...(times === 0
      ? paragraph(none)
      : [
          ...pairs([
            [
              'from',
              `${countText(batches, 'batch', 'batches')}, ${countText(times, 'time')}; ${setAside} set aside`,
            ],
            ['never timed', `kinds without a time go by ${factorText(overall)} of what is set`],
            [
              'spread',
              `a whole batch strays ${Math.round(spread.common * 100)} %, a piece ${Math.round(spread.each * 100)} %`,
            ],
          ]),
          '',
          ...table(columns, rows),
        ]),
  ]
  return `${lines.join('\n')}\n`
}
