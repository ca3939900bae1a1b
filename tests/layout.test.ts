import { dirname, join, normalize } from 'node:path'
import { describe, expect, it } from 'vitest'
import { filesIn, textOf as text } from './files.ts'

interface Import {
  from: string
  to: string
  bare: boolean
}

function importsOf(file: string): Import[] {
  const found = text(file).matchAll(/(?:from\s+|import\s*\(\s*|import\s+)['"]([^'"]+)['"]/g)
  return [...found].map(([, to]) => {
    const bare = !to!.startsWith('.')
    return { from: file, to: bare ? to! : normalize(join(dirname(file), to!)), bare }
  })
}

const sources = ['shared', 'server', 'web', 'migrations', 'seed'].flatMap((room) => filesIn(room))
const imports = sources.flatMap(importsOf)

/** Left may not import right; files of one rank may import each other. */
const ranks: [RegExp, number][] = [
  [/^shared\/(problem|input|median)\.ts$|^shared\/units\//, 0],
  [/^shared\/(wood|profile)\//, 1],
  [/^shared\/blank\//, 2],
  [/^shared\/cutting\//, 3],
  [/^shared\/turning\//, 3],
  [/^shared\/route\//, 4],
  [/^shared\/(estimate|schedule)\//, 5],
  [/^shared\/matching\//, 6],
  [/^shared\/(job|shop|piece|library)\.ts$/, 7],
  [/^shared\/(plan|plan-parts|yard-input|lumber|lumber-on-hand|glue-choices|open-work)\.ts$/, 8],
  [/^shared\/contract\/|^shared\/ships\.ts$/, 9],
]
const rankOf = (file: string): number | undefined => ranks.find(([room]) => room.test(file))?.[1]

describe('the house', () => {
  it('has a rank for every file of the core', () => {
    expect(filesIn('shared').filter((f) => rankOf(f) === undefined)).toEqual([])
  })

  it('lets nothing in the core import from the right', () => {
    const wrong = imports
      .filter((i) => !i.bare && i.from.startsWith('shared/'))
      .filter((i) => (rankOf(i.to) ?? 99) > rankOf(i.from)!)
    expect(wrong.map((i) => `${i.from} -> ${i.to}`)).toEqual([])
  })

  it('keeps cutting and turning apart', () => {
    const wrong = imports.filter(
      (i) =>
        (i.from.startsWith('shared/cutting/') && i.to.startsWith('shared/turning/')) ||
        (i.from.startsWith('shared/turning/') && i.to.startsWith('shared/cutting/')),
    )
    expect(wrong.map((i) => `${i.from} -> ${i.to}`)).toEqual([])
  })

  it('lets the core reach nothing but itself and zod', () => {
    const wrong = imports.filter(
      (i) => i.from.startsWith('shared/') && (i.bare ? i.to !== 'zod' : !i.to.startsWith('shared/')),
    )
    expect(wrong.map((i) => `${i.from} -> ${i.to}`)).toEqual([])
  })

  it('keeps clock and randomness out of the core', () => {
    const wrong = filesIn('shared').filter((f) =>
      /Date\.now|new Date\(|Math\.random|performance\.now|crypto\./.test(text(f)),
    )
    expect(wrong).toEqual([])
  })

  it('keeps server and web apart', () => {
    const wrong = imports.filter(
      (i) =>
        (i.from.startsWith('server/') && i.to.startsWith('web/')) ||
        (i.from.startsWith('web/') && /^(server|migrations|seed)\//.test(i.to)),
    )
    expect(wrong.map((i) => `${i.from} -> ${i.to}`)).toEqual([])
  })

  it('lets only storage, migrations and their tests know the query builder', () => {
    const wrong = imports.filter((i) => i.to === 'kysely' && !/^(server\/storage|migrations)\//.test(i.from))
    expect(wrong.map((i) => i.from)).toEqual([])
  })

  it('keeps storage free of the web framework and routes free of storage’s tools', () => {
    const wrong = imports.filter(
      (i) =>
        (i.from.startsWith('server/storage/') && /fastify/.test(i.to)) ||
        (i.from.startsWith('server/routes/') && /kysely|better-sqlite3/.test(i.to)),
    )
    expect(wrong.map((i) => `${i.from} -> ${i.to}`)).toEqual([])
  })

  it('lets an element show and a page fetch', () => {
    const wrong = imports.filter(
      (i) => i.from.startsWith('web/elements/') && /^web\/(pages|api\.ts)/.test(i.to),
    )
    expect(wrong.map((i) => `${i.from} -> ${i.to}`)).toEqual([])
    const fetching = filesIn('web').filter(
      (f) => f !== 'web/api.ts' && f !== 'web/sw.ts' && /\bfetch\(/.test(text(f)),
    )
    expect(fetching).toEqual([])
  })

  it('has no import cycle in the core', () => {
    const to = new Map<string, string[]>()
    for (const i of imports.filter((i) => !i.bare && i.from.startsWith('shared/')))
      to.set(i.from, [...(to.get(i.from) ?? []), i.to])
    const typeOnly = (from: string, target: string): boolean =>
      [...text(from).matchAll(/import\s+type[^;'"]*['"]([^'"]+)['"]/g)].some(
        ([, t]) => normalize(join(dirname(from), t!)) === target,
      )
    const cycles: string[] = []
    const state = new Map<string, 'open' | 'done'>()
    const visit = (file: string, trail: string[]): void => {
      if (state.get(file) === 'done') return
      if (state.get(file) === 'open') {
        cycles.push([...trail.slice(trail.indexOf(file)), file].join(' -> '))
        return
      }
      state.set(file, 'open')
      for (const next of to.get(file) ?? []) if (!typeOnly(file, next)) visit(next, [...trail, file])
      state.set(file, 'done')
    }
    for (const file of to.keys()) visit(file, [])
    expect(cycles).toEqual([])
  })

  it('has no room for leftovers', () => {
    expect(sources.filter((f) => /(^|\/)(utils?|helpers?|common|misc)(\/|\.ts$)/.test(f))).toEqual([])
  })
})

describe('the words', () => {
  it('keeps to one word a thing', () => {
    const shown = [...filesIn('shared'), ...filesIn('web'), ...filesIn('server')].filter((f) =>
      /\bwork ?pieces?\b/i.test(text(f)),
    )
    expect(shown).toEqual([])
  })
})
