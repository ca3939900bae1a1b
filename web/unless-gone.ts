import { Refusal } from './api.ts'

/**
 * What is stored under an id; nothing for something new, and where it is gone while edits of it are kept on this
 * device, to be saved as something new.
 */
export async function unlessGone<T>(
  id: string,
  ask: (id: string) => Promise<T>,
  shelf: { has: (id: string) => boolean },
): Promise<T | undefined> {
  if (id === '') return undefined
  try {
    return await ask(id)
  } catch (failure) {
    if (failure instanceof Refusal && failure.status === 404 && shelf.has(id)) return undefined
    throw failure
  }
}
