import { describe, expect, it } from 'vitest'
import { newSheet, withDiameter, withReading } from '../../web/sheet-file.ts'
import { noHistory, redone, remembered, undone } from '../../web/sheet-history.ts'

const sheets = [newSheet('in')]
for (const text of ['1', '1 1', '1 1/', '1 1/2']) sheets.push(withReading(sheets.at(-1)!, 0, 0, { at: text }))
const position = sheets.at(-1)!
const diameter = withDiameter(position, 0, 0, 0, '2')

const written = () => {
  let history = noHistory
  for (const before of sheets.slice(0, -1)) history = remembered(history, before, 'at')
  return remembered(history, position, 'diameter')
}

describe('the history of a sheet', () => {
  it('takes the strokes of one field back together', () => {
    const first = undone(written(), diameter)!
    expect(first.sheet).toEqual(position)
    const second = undone(first.history, first.sheet)!
    expect(second.sheet).toEqual(newSheet('in'))
    expect(undone(second.history, second.sheet)).toBeUndefined()
  })

  it('does again what was taken back, until something else is written', () => {
    const back = undone(written(), diameter)!
    const again = redone(back.history, back.sheet)!
    expect(again.sheet).toEqual(diameter)
    expect(redone(again.history, again.sheet)).toBeUndefined()
    expect(redone(remembered(back.history, back.sheet, 'name'), position)).toBeUndefined()
  })

  it('counts writing in the same field anew after something was taken back', () => {
    const back = undone(written(), diameter)!
    const more = remembered(back.history, back.sheet, 'at')
    expect(undone(more, withReading(position, 0, 0, { at: '1 1/4' }))!.sheet).toEqual(position)
  })

  it('remembers no more than a device has room for, and over a reload', () => {
    let history = noHistory
    for (let i = 0; i < 1_000; i++) history = remembered(history, position, `field ${i}`)
    expect(history.past).toHaveLength(200)
    expect(JSON.parse(JSON.stringify(history))).toEqual(history)
  })
})
