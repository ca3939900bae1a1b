import { EASY_ARC, LEAST_ARC, latheType } from './letter-height.ts'

/** Largest type for words, in parts of what is read easily; figures are a quarter larger. */
const LARGEST = 2.5
const FIGURES = 1.25

/**
 * Sets the type of the operation in `view` as large as fits, words never below the least that is read from the lathe,
 * figures at least as large as is read easily there. Where that is too much, `close` leaves out what is said
 * elsewhere too, then figures shrink to the least; what still does not fit is scrolled to.
 */
export function fitType(view: HTMLElement): void {
  const [least, easy] = [latheType(LEAST_ARC), latheType(EASY_ARC)]
  const fitsAt = (words: number, figures = Math.max(easy, FIGURES * words)): boolean => {
    view.style.setProperty('--words', `${words}px`)
    view.style.setProperty('--figures', `${figures}px`)
    return fits(view)
  }
  view.classList.remove('close', 'broken')
  if (!fitsAt(least)) view.classList.add('close')
  if (fitsAt(least)) fitsAt(largest(least, LARGEST * easy, fitsAt))
  else if (!fitsAt(least, least)) view.classList.add('broken')
}

/** The largest size that fits between one that does and one that need not, to the px. */
function largest(from: number, to: number, fitsAt: (size: number) => boolean): number {
  let [small, large] = [from, to]
  while (large - small > 1) {
    const middle = (small + large) / 2
    if (fitsAt(middle)) small = middle
    else large = middle
  }
  return small
}

/** Nothing is cut off at the foot, and no line reaches out of its box. */
const fits = (view: HTMLElement): boolean =>
  [...view.querySelectorAll('.work, .mind')].every((part) => part.scrollHeight <= part.clientHeight) &&
  [...view.querySelectorAll('h2, .big')].every((line) => line.scrollWidth <= line.clientWidth)
