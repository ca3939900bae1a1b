/** So many steps back are remembered. */
const MOST_STEPS = 200

/** The latest of the steps, no more of them and of their characters than a device has room for. */
export function keptSteps<T>(past: readonly T[], mostCharacters: number): T[] {
  let characters = 0
  let first = past.length
  while (first > 0 && past.length - first < MOST_STEPS) {
    characters += JSON.stringify(past[first - 1]).length
    if (characters > mostCharacters) break
    first--
  }
  return past.slice(first)
}
