import { keepEntry, keptEntry } from './kept-entry.ts'

const PLACE = 'setwright.lumber-choice'

/** The jobs ticked where the yard is asked, and the yard asked by its name; kept on this device. */
export interface LumberChoice {
  jobs: string[]
  yard: string
}

export const keptChoice = (): LumberChoice => keptEntry<LumberChoice>(PLACE, { jobs: [], yard: '' })

export const keepChoice = (choice: LumberChoice): void => keepEntry(PLACE, choice)
