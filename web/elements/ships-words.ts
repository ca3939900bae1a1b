import type { ShipRow, Ships } from '../../shared/ships.ts'

const counted = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`

/** `2 working days late`. */
export const lateText = (days: number): string => `${counted(days, 'working day')} late`

/** A day as it is said, with its year where that is another one: `Fri 4 Dec`, `Fri 8 Jan 2027`. */
export function dayText(iso: string, today?: string): string {
  const day = new Date(`${iso}T00:00:00Z`)
  const part = (options: Intl.DateTimeFormatOptions): string =>
    day.toLocaleDateString('en', { ...options, timeZone: 'UTC' })
  const year = today === undefined || today.slice(0, 4) === iso.slice(0, 4) ? '' : ` ${iso.slice(0, 4)}`
  return `${part({ weekday: 'short' })} ${day.getUTCDate()} ${part({ month: 'short' })}${year}`
}

/** How a job stands against its date, in one mark: a word, and what it is seen as. */
export function standing({ due, late, sure, ends }: ShipRow): {
  text: string
  look: 'in' | 'going' | 'under' | ''
} {
  if (!ends) return { text: 'no end in sight', look: 'under' }
  if (due === undefined) return { text: 'no date', look: '' }
  if (late > 0) return { text: lateText(late), look: 'under' }
  return sure.late > 0 ? { text: 'in time, barely', look: 'going' } : { text: 'in time', look: 'in' }
}

/** A chance as people say it: `about 8 chances in 10`, `hardly a chance`, `all but certain`. */
export function chanceText(chance: number): string {
  const tenths = Math.round(chance * 10)
  if (chance < 0.05) return 'hardly a chance'
  if (chance >= 0.95) return 'all but certain'
  return `about ${tenths} ${tenths === 1 ? 'chance' : 'chances'} in 10`
}

/** One job in a sentence: `Table legs: due Fri 4 Dec, ships Tue 8 Dec, 2 working days late.` */
export function shipsSentence(row: ShipRow, today: string): string {
  const day = (iso: string): string => dayText(iso, today)
  const { name, due, done, late, sure, ends } = row
  if (!ends)
    return `${name}: not done within the days that can be planned; look at its minutes and the shop’s hours.`
  if (due === undefined) return `${name}: ships ${day(done)}; nobody waits for it.`
  const against = late > 0 ? `, ${lateText(late)}` : ', in time'
  const slowly =
    late === 0 && sure.late > 0 ? `; where all goes slowly ${day(sure.done)}, ${lateText(sure.late)}` : ''
  return `${name}: due ${day(due)}, ships ${day(done)}${against}${slowly}.`
}

/** What the order comes to, and what it is good for. */
export function orderSentence({ by, rows, totalLate, totalLateByDue, proven }: Ships): string {
  const dated = rows.filter(({ due }) => due !== undefined).length
  if (dated === 0) return 'No open job has a date to be late for.'
  const all = totalLate === 0 ? 'nothing is late' : `${lateText(totalLate)} in all`
  if (by === 'hand') return `In your own order: ${all}.`
  if (by === 'first') return `With that job first: ${all}.`
  if (totalLate === 0) return 'In this order nothing is late.'
  const least = proven ? 'no other order is late by fewer' : 'the best of many orders tried'
  const due = totalLateByDue > totalLate ? `; by due dates alone it would be ${totalLateByDue}` : ''
  return `In this order ${all}: ${least}${due}.`
}
