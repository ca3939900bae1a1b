import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { shrinkageOf, shrinkageShare } from '../../shared/blank/shrinkage.ts'
import { moistureInAir } from '../../shared/wood/air.ts'
import { gravityAt, moistureMax, volumetricShrinkage, wetDensity } from '../../shared/wood/density.ts'
import { emcPct } from '../../shared/wood/emc.ts'
import { greenMoistureOf } from '../../shared/wood/green-moisture.ts'
import { movementOf } from '../../shared/wood/movement.ts'
import { type Species, speciesKey, speciesNamed } from '../../shared/wood/species.ts'
import { near } from '../near.ts'
import { type Row, woodRows } from './rows.ts'

const text = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8')
const woods = JSON.parse(text('../../seed/species.json')) as Species[]

/** A wood of which only these values are known. */
const woodWith = (values: Partial<Species>): Species => ({
  key: 'wood',
  name: 'Wood',
  kind: 'hardwood',
  source: 'test',
  confidence: 'read',
  safe: true,
  ...values,
}) // prettier-ignore

/** Every row against what the program makes of its inputs; `expected` where a row prints more than is asked. */
function hold(
  rows: Row[],
  actual: (inputs: any, row: Row) => unknown,
  expected = (row: Row) => row.expected,
): void {
  for (const row of rows) {
    it(`${row.id}: ${row.what} (${row.source})`, () =>
      near(actual(row.inputs, row), expected(row), row.tolerance, row.id))
  }
}

describe('equilibrium moisture content', () => {
  hold(woodRows('emc-'), ({ temp_C, relative_humidity }) => emcPct(temp_C, relative_humidity))
  hold(woodRows('emc-'), ({ temp_C, relative_humidity }) =>
    moistureInAir({ temperatureC: temp_C, humidityPct: 100 * relative_humidity }),
  )

  const [head, ...lines] = text('./emc_table_4_2.csv')
    .trim()
    .split(/\r?\n/)
    .map((line) => line.split(',')) // prettier-ignore
  const cells = lines.flatMap(([tempF, , ...values]) =>
    values.flatMap((value, i) =>
      value === ''
        ? []
        : [{ tempF: Number(tempF), humidity: Number(head![i + 2]!.slice(3)) / 100, emc: Number(value) }],
    ),
  )
  it('agrees with every cell of the handbook’s table 4-2 to its rounding', () => {
    expect(cells.length).toBeGreaterThan(300)
    // the bound of the single rows: half of the last printed digit, and whole degrees Fahrenheit
    for (const { tempF, humidity, emc } of cells)
      near(emcPct(((tempF - 32) * 5) / 9, humidity), emc, 0.07, `${tempF} °F, ${humidity}`)
  })
})

describe('movement with moisture', () => {
  /** Change by eq. 13-2 with one coefficient. */
  const withCoefficient = (size: number, c: number, from: number, to: number) =>
    movementOf(woodWith({ cr: c, ct: c }), size, from, to)!.tangential

  hold(woodRows('dimchg-13-2-'), ({ DI_mm, DI_in, C, MI_pct, MF_pct }) =>
    withCoefficient(DI_mm ?? DI_in, C, MI_pct, MF_pct),
  )
  hold(woodRows('dimchg-redoak'), ({ DI_in, C, MI_pct, MF_pct }) => withCoefficient(DI_in, C, MI_pct, MF_pct))
  // the change alone is printed; any two contents within 6 to 14 % that lie so far apart will do
  hold(woodRows('dimchg-redalder'), ({ DI_in, C, dMC_pct }) => withCoefficient(DI_in, C, 7, 7 + dMC_pct))

  const byShrinkage = (size: number, shrinkage: number, from: number, to: number) =>
    movementOf(woodWith({ shrinkTangentialPct: shrinkage, shrinkRadialPct: shrinkage }), size, from, to)!
  hold(woodRows('dimchg-13-3-'), ({ DI_mm, S_pct, MI_pct, MF_pct }) => {
    const { tangential, equation } = byShrinkage(DI_mm, S_pct, MI_pct, MF_pct)
    expect(equation).toBe('13-3')
    return tangential
  })

  // shrinkage from green is eq. 13-3 from fibre saturation
  hold(
    woodRows('shrink-4-9-'),
    ({ S0_pct, x_pct, MCfs_pct }) => -byShrinkage(100, S0_pct, MCfs_pct, x_pct).tangential,
  )

  hold(
    woodRows('shrink-4-9-'),
    ({ S0_pct, x_pct, MCfs_pct }) =>
      100 *
      shrinkageShare(woodWith({ shrinkTangentialPct: S0_pct, shrinkRadialPct: S0_pct }), MCfs_pct, x_pct)!
        .share,
  )

  // what a blank is larger by is what the row says that size loses again
  hold(woodRows('dimchg-13-3-'), ({ DI_mm, S_pct, MI_pct, MF_pct }, { expected }) => {
    const species = woodWith({ shrinkTangentialPct: S_pct, shrinkRadialPct: S_pct })
    return -shrinkageOf(DI_mm + expected, { species, sawn: MI_pct, turned: MF_pct, inUse: MF_pct })!.across
  })

  hold(woodRows('round-ovality'), ({ D_green_mm, S_T_pct, S_R_pct, x_pct }) => {
    const moved = movementOf(
      woodWith({ shrinkTangentialPct: S_T_pct, shrinkRadialPct: S_R_pct }),
      D_green_mm,
      60,
      x_pct,
    )!
    return {
      D_T_mm: D_green_mm + moved.tangential,
      D_R_mm: D_green_mm + moved.radial,
      ovality_mm: moved.outOfRound,
    }
  })

  describe('printed coefficients follow from printed shrinkage: eq. 13-3 for one per cent about 10 %', () => {
    const coefficient = ({ S_pct }: { S_pct: number }) => byShrinkage(1, S_pct, 10, 11).tangential
    hold(woodRows('coef-maple-sugar'), coefficient)
    hold(woodRows('coef-beech'), coefficient)
    hold(woodRows('coef-walnut'), coefficient)
    hold(woodRows('coef-basswood'), coefficient)
    hold(woodRows('coef-sweetgum'), coefficient)
    hold(woodRows('coef-locust'), coefficient)
    hold(woodRows('coef-persimmon'), coefficient)
  })
})

describe('wood as it was felled', () => {
  hold(woodRows('greenmc-'), ({ species }) => {
    const { heartwood, sapwood } = greenMoistureOf(speciesKey(species))!
    return { heartwood_pct: heartwood, sapwood_pct: sapwood ?? null }
  })
  hold(woodRows('s0-4-12'), ({ Gb }) => volumetricShrinkage(Gb))
})

describe('density', () => {
  const LB_PER_CUBIC_FOOT = 62.428 / 1000
  hold(
    woodRows('dens-'),
    ({ Gx, mc_pct }, { units }) => wetDensity(Gx, mc_pct) * (units === 'kg/m3' ? 1 : LB_PER_CUBIC_FOOT),
  )
  hold(woodRows('sg-4-13-'), ({ Gb, x_pct }) => gravityAt(Gb, x_pct))
  // by eq. 4-13 rather than from volumetric shrinkage; the printed value at 12 % is what it is held to
  hold(woodRows('sg12-'), ({ Gb, x_pct }) => gravityAt(Gb, x_pct))
  hold(woodRows('mcmax-'), ({ Gb }) => moistureMax(Gb))
})

describe('the table of woods carries what the handbook prints in pounds and inches', () => {
  const PASCAL = 6894.757 // per lbf/in²
  const NEWTON = 4.448222 // per lbf
  const values: Record<string, (id: string) => number | undefined> = {
    'conv-maple-sugar-mor': () => speciesNamed(woods, 'maple-sugar').morMPa,
    'conv-maple-sugar-moe': () => speciesNamed(woods, 'maple-sugar').moeGPa,
    'conv-hickory-shagbark-mor': () => speciesNamed(woods, 'hickory-shagbark').morMPa,
    'conv-oak-northern-red-side-hardness': () => speciesNamed(woods, 'oak-northern-red').hardnessN,
    'conv-beech-american-moe': () => speciesNamed(woods, 'beech-american').moeGPa,
    'conv-pine-longleaf-side-hardness': () => speciesNamed(woods, 'pine-longleaf').hardnessN,
  }
  const factor: Record<string, number> = { MPa: PASCAL / 1e6, GPa: (PASCAL * 1e6) / 1e9, N: NEWTON }
  for (const row of woodRows('conv-')) {
    it(`${row.id}: ${row.what} (${row.source})`, () => {
      const carried = values[row.id]!(row.id)
      expect(carried).toBe(row.expected)
      near(carried, row.inputs.value * factor[row.units]!, row.tolerance)
    })
  }
})
