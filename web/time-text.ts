/**
 * Minutes as people say them: `4.5 min`, `38 min`, `3 h 20 min`.
 *
 * Under ten minutes to a tenth; from an hour on in hours and whole minutes.
 */
export function minutesText(minutes: number): string {
  if (Math.round(minutes * 10) < 100) return `${Math.round(minutes * 10) / 10} min`
  const whole = Math.round(minutes)
  if (whole < 60) return `${whole} min`
  return whole % 60 === 0
    ? `${whole / 60} h`
    : `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')} min`
}

/** Seconds of a stopwatch as `m:ss`. */
export function stopwatchText(seconds: number): string {
  const whole = Math.floor(seconds)
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`
}

/** A moment as it stands in a log, in the time of this device: `Mar 4, 14:05`. */
export const momentText = (at: string): string =>
  new Date(at).toLocaleString('en', {
    month: 'short',
    day: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  })

/** The same with its year, for what is kept for long: `Mar 4, 2026, 14:05`. */
export const datedText = (at: string): string =>
  new Date(at).toLocaleString('en', {
    year: 'numeric',
    month: 'short',
    day: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  })
