import { describe, expect, it } from 'vitest'
import { allowanceSources, defaultAllowances } from '../shared/blank/allowances.ts'
import { defaultShop, shopSources } from '../shared/shop.ts'
import { filesIn, textOf } from './files.ts'

describe('every figure says where it comes from', () => {
  it('names a source for each allowance, in both systems', () => {
    expect(Object.keys(allowanceSources).sort()).toEqual(Object.keys(defaultAllowances('in')).sort())
    expect(Object.keys(allowanceSources).sort()).toEqual(Object.keys(defaultAllowances('mm')).sort())
    for (const source of Object.values(allowanceSources)) expect(source.length).toBeGreaterThan(10)
  })

  it('names a source for each default of the shop', () => {
    const settings = Object.keys(defaultShop).filter(
      (k) => !['name', 'heading', 'currency', 'units', 'allowances', 'species'].includes(k),
    )
    expect(settings.filter((name) => !shopSources[name])).toEqual([])
  })

  it('names source and confidence for each wood', () => {
    const woods = JSON.parse(textOf('seed/species.json')) as {
      source: string
      confidence: string
      name: string
    }[]
    expect(woods.length).toBeGreaterThan(100)
    expect(woods.filter((w) => !w.source || !w.confidence).map((w) => w.name)).toEqual([])
  })

  it('names the origin of every file in seed', () => {
    const readme = textOf('seed/README.md')
    const files = filesIn('seed', '').map((f) => f.slice('seed/'.length))
    expect(files.filter((f) => f !== 'README.md' && !readme.includes(f))).toEqual([])
  })

  it('keeps a source, or the words for having none, beside the numbers of the trade', () => {
    const named =
      /common practice, no source|from memory|Handbook|NHLA|Roark|Milton|ISO|eq\.|table|text|manual|by definition|exact/i
    const silent = ['turning', 'estimate', 'wood', 'blank', 'route'].flatMap((room) =>
      filesIn(`shared/${room}`).flatMap((file) => {
        const lines = textOf(file).split('\n')
        return lines.flatMap((line, i) => {
          const figure = /^(?:export )?const [A-Z_]+ = (?:inches\()?[\d._]+(?: ?[/*] ?[\d._]+)*\)?$/.test(
            line,
          )
          const about = lines.slice(Math.max(0, i - 5), i + 1).join('\n')
          const count = /_MAX|PANELS|DEPTH/.test(line) // how far a loop runs: no figure of the trade
          return figure && !count && !named.test(about) ? [`${file}: ${line}`] : []
        })
      }),
    )
    expect(silent).toEqual([])
  })
})
