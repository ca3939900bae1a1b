import { describe, expect, it } from 'vitest'
import { Refusal } from '../../web/api.ts'
import type { Draft } from '../../web/drafts.ts'
import { DraftSaver, sameFile } from '../../web/save-draft.ts'

interface Sheet {
  name: string
}
interface Kept extends Sheet {
  id: string
  revision: number
}

/** A server for one kind of file: keys, revisions, and answers that can get lost. */
function server() {
  const kept = new Map<string, Kept>()
  let losing = false
  const answer = (stored: Kept): Kept => {
    if (!losing) return stored
    losing = false
    throw new Refusal(0, 'The server cannot be reached.')
  }
  const saver = new DraftSaver<Sheet, Kept>({
    add: async ({ key, name }) => {
      const there = kept.get(key)
      if (there && there.name !== name) throw new Refusal(409, 'key', [], 'key-reused')
      if (!there) kept.set(key, { id: key, revision: 1, name })
      return answer(kept.get(key)!)
    },
    change: async (id, revision, { name }) => {
      const there = kept.get(id)!
      if (there.revision !== revision) throw new Refusal(412, 'stale')
      kept.set(id, { id, revision: revision + 1, name })
      return answer(kept.get(id)!)
    },
    load: async (id) => {
      const there = kept.get(id)
      if (!there) throw new Refusal(404, 'not there')
      return there
    },
    sent: (file) => file,
    fileOf: ({ name }) => ({ name }),
  })
  return {
    saver,
    kept,
    loseNext: () => {
      losing = true
    },
  }
}

const fresh = (name: string): Draft<Sheet> => ({ file: { name }, key: 'k1' })

describe('saving a draft', () => {
  it('stores something new once, however often its answer gets lost', async () => {
    const { saver, kept, loseNext } = server()
    const draft = saver.withSending(fresh('Leg'))
    loseNext()
    await expect(saver.save('', draft)).rejects.toThrow('cannot be reached')
    await saver.save('', saver.withSending(draft))
    expect([...kept.values()]).toEqual([{ id: 'k1', revision: 1, name: 'Leg' }])
  })

  it('goes on as a change when something new was stored and written on before its answer came', async () => {
    const { saver, kept, loseNext } = server()
    const draft = saver.withSending(fresh('Leg'))
    loseNext()
    await expect(saver.save('', draft)).rejects.toThrow()
    await saver.save('', saver.withSending({ ...draft, file: { name: 'Leg, thinner' } }))
    expect([...kept.values()]).toEqual([{ id: 'k1', revision: 2, name: 'Leg, thinner' }])
  })

  it('takes no key that belongs to something else', async () => {
    const { saver, kept } = server()
    kept.set('k1', { id: 'k1', revision: 1, name: 'Somebody’s' })
    await saver.save('', saver.withSending(fresh('Leg')))
    expect([...kept.values()].map(({ name }) => name)).toEqual(['Somebody’s', 'Leg'])
  })

  it('is not refused for a change that is its own', async () => {
    const { saver, kept, loseNext } = server()
    kept.set('k1', { id: 'k1', revision: 1, name: 'Leg' })
    const draft = saver.withSending({ ...fresh('Leg, once'), revision: 1 })
    loseNext()
    await expect(saver.save('k1', draft)).rejects.toThrow()
    await saver.save('k1', saver.withSending({ ...draft, file: { name: 'Leg, twice' } }))
    expect(kept.get('k1')).toMatchObject({ revision: 3, name: 'Leg, twice' })
  })

  it('is refused where somebody else changed it, and changes nothing', async () => {
    const { saver, kept } = server()
    kept.set('k1', { id: 'k1', revision: 2, name: 'Theirs' })
    const draft = saver.withSending({ ...fresh('Mine'), revision: 1 })
    await expect(saver.save('k1', draft)).rejects.toMatchObject({ status: 412 })
    expect(kept.get('k1')).toMatchObject({ revision: 2, name: 'Theirs' })
  })

  it('remembers a few sendings only', () => {
    const { saver } = server()
    let draft = fresh('0')
    for (let i = 1; i <= 9; i++) draft = saver.withSending({ ...draft, file: { name: String(i) } })
    expect(draft.sent?.map(({ name }) => name)).toEqual(['5', '6', '7', '8', '9'])
  })
})

describe('sameFile', () => {
  it('minds what is said, not in which order', () => {
    expect(sameFile({ a: 1, b: [{ c: 2, d: 3 }] }, { b: [{ d: 3, c: 2 }], a: 1, e: undefined })).toBe(true)
    expect(sameFile({ b: [1, 2] }, { b: [2, 1] })).toBe(false)
  })
})
