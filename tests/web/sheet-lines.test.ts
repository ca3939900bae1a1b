import { describe, expect, it } from 'vitest'
import {
  newSheet,
  readingAt,
  withDiameter,
  withOriginalChange,
  withPlace,
  withReading,
} from '../../web/sheet-file.ts'
import { withLines } from '../../web/sheet-lines.ts'

const read = (...places: string[]) =>
  places.reduce((sheet, at, i) => withReading(sheet, 0, i, { at }), newSheet('in'))
const positions = (sheet: ReturnType<typeof read>) => sheet.stations.map((_, i) => readingAt(sheet, 0, i).at)

describe('regular lines', () => {
  it('become places whose positions are filled', () => {
    const sheet = withLines(read(), 0, { from: '2', to: '10', pitch: '2' })
    expect(positions(sheet)).toEqual(['2', '4', '6', '8', '10'])
  })

  it('stand between the places there are, which stay as they were written', () => {
    const tapered = withDiameter(read('0', '1,5', '10 in'), 0, 2, 0, '1')
    const sheet = withLines(tapered, 0, { from: '1 1/2', to: '10', pitch: '2 1/2' })
    expect(positions(sheet)).toEqual(['0', '1,5', '4', '6 1/2', '9', '10 in'])
    expect(readingAt(sheet, 0, 5).diameters).toEqual(['1'])
  })

  it('run down from the top where the tape does', () => {
    const seat = withOriginalChange(read('17', '0'), 0, {
      datum: { name: 'seat', fromFoot: '17', towards: 'foot' },
    })
    expect(positions(withLines(seat, 0, { from: '0', to: '17', pitch: '6' }))).toEqual(['17', '12', '6', '0'])
  })

  it('do not cut a bead, and go on with a curve', () => {
    const bead = withPlace(read('0', '2'), 0, { then: 'bead' })
    expect(() => withLines(bead, 0, { from: '0', to: '2', pitch: '1' })).toThrow(
      /cut the bead above station 0/,
    )
    const curve = withPlace(read('0', '2'), 0, { then: 'curve' })
    const then = withLines(curve, 0, { from: '0', to: '2', pitch: '1' }).stations.map(({ then }) => then)
    expect(then).toEqual(['curve', 'curve', 'straight'])
  })

  it('are refused with the field that cannot be used', () => {
    expect(() => withLines(read(), 0, { from: '0', to: 'x', pitch: '1' })).toThrow('To: “x” is no length.')
    expect(() => withLines(read(), 0, { from: '0', to: '4', pitch: '0' })).toThrow(/pitch/)
    expect(() => withLines({ ...read(), way: 'span' }, 0, { from: '0', to: '4', pitch: '1' })).toThrow(
      /from one place/,
    )
  })
})
