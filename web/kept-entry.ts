/** What was typed and is not part of any file yet, as this device keeps it; `fallback` where it keeps nothing. */
export function keptEntry<T extends object>(place: string, fallback: T): T {
  try {
    const found = JSON.parse(localStorage.getItem(place) ?? 'null') as Partial<T> | null
    return typeof found === 'object' && found !== null ? { ...fallback, ...found } : fallback
  } catch {
    return fallback
  }
}

/** Keeps it over a reload; without room on this device it lasts as long as the page. */
export function keepEntry(place: string, entry: object): void {
  try {
    localStorage.setItem(place, JSON.stringify(entry))
  } catch {
    // Nothing else is lost by it.
  }
}
