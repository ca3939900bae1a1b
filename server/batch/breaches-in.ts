import { type Breach, gathering } from '../../shared/problem.ts'

/** The breaches found by one reader, under the path of what it read. */
export function breachesIn(path: string, read: () => unknown): Breach[] {
  const found: Breach[] = []
  gathering(found, read)
  return found.map((breach) => ({ ...breach, path: breach.path ? `${path}.${breach.path}` : path }))
}

/** The same id twice in one list, the list named by its path. */
export function repeatedIds(path: string, list: { id: string }[]): Breach[] {
  const first = new Map<string, number>()
  return list.flatMap(({ id }, i) => {
    const earlier = first.get(id)
    if (earlier === undefined) first.set(id, i)
    return earlier === undefined
      ? []
      : [
          {
            path: `${path}[${i}].id`,
            message: `must be used once; read ${JSON.stringify(id)}, as in ${path}[${earlier}]`,
          },
        ]
  })
}
