import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Plan } from '../../shared/plan.ts'
import type { Species } from '../../shared/wood/species.ts'
import { length, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { changeText } from './amounts.ts'
import { confidenceOf } from './species-words.ts'

const fieldWords: Record<string, string> = {
  sgG: 'gravity green',
  sg12: 'gravity at 12 %',
  moe: 'stiffness',
  mor: 'strength',
  hard: 'hardness',
  R: 'radial shrinkage',
  T: 'tangential shrinkage',
  V: 'volumetric shrinkage',
  cr: 'radial change',
  ct: 'tangential change',
} // prettier-ignore

/** `cross: sgG sg12; read: V` in words. */
const fieldsTold = (text: string) =>
  text
    .replace(/\b(sgG|sg12|moe|mor|hard|R|T|V|cr|ct)\b/g, (code) => `${fieldWords[code]},`)
    .replace(/,(?=;|$)/g, '')
    .replace(/\bcross:/g, 'two prints agree:')
    .replace(/\bread:/g, 'read once:')

/** The figures of a wood with where they come from, and what they mean for this part. */
@customElement('species-card')
export class SpeciesCard extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      table {
        max-width: 36rem;
      }
    `,
  ]

  @property({ attribute: false }) wood!: Species
  @property({ attribute: false }) plan?: Plan

  constructor() {
    super()
    new SessionController(this)
  }

  override render() {
    const { wood } = this
    const percent = (fraction: number | undefined) =>
      fraction === undefined ? undefined : String(Math.round(fraction * 1e8) / 1e6)
    const gravity = (value: number | undefined) =>
      value?.toLocaleString('en', { minimumFractionDigits: 2, maximumFractionDigits: 3 })
    const rows: [string, number | string | undefined, string][] = [
      ['Specific gravity, green volume', gravity(wood.sgGreen), ''],
      ['Specific gravity at 12 % MC', gravity(wood.sg12), ''],
      ['Stiffness (modulus of elasticity) at 12 % MC', wood.moeGPa, 'GPa'],
      ['Strength (modulus of rupture) at 12 % MC', wood.morMPa, 'MPa'],
      ['Side hardness at 12 % MC', wood.hardnessN, 'N'],
      ['Shrinkage green to ovendry, radial', wood.shrinkRadialPct, '%'],
      ['Shrinkage green to ovendry, tangential', wood.shrinkTangentialPct, '%'],
      ['Change per 1 % MC, radial', percent(wood.cr), '% of the width'],
      ['Change per 1 % MC, tangential', percent(wood.ct), '% of the width'],
    ]
    return html`
      <div class="page">
        <p>
          ${wood.name}${wood.botanical ? html` (<i>${wood.botanical}</i>)` : nothing}, ${wood.kind}
          <span class="mark ${wood.safe ? 'in' : 'over'}">${confidenceOf(wood)}</span>
        </p>
        <table>
          <tbody>
            ${rows.map(
              ([name, value, unit]) => html`<tr>
                <th scope="row">${name}</th>
                <td class="number">${value === undefined ? html`<span class="soft">not known</span>` : `${value}${unit ? ` ${unit}` : ''}`}</td>
              </tr>`,
            )}
          </tbody>
        </table>
        <p class="small soft">
          Source: ${wood.source}.${wood.fieldConfidence ? html` By value, ${fieldsTold(wood.fieldConfidence)}.` : nothing}
          ${wood.notes ? html` ${wood.notes}.` : nothing}
        </p>
        ${this.movement()}
      </div>
    `
  }

  private movement() {
    if (!this.plan) return nothing
    const { part, job } = this.plan
    return html`
      <p>
        ${part.density === undefined ? 'How much it weighs cannot be told.' : `At ${job.moisture} % MC the wood weighs ${Math.round(part.density)} kg/m³.`}
        ${this.moves()}
      </p>
    `
  }

  /** What the change of moisture from turning to use does to the largest diameter. */
  private moves() {
    const { part, job } = this.plan!
    if (!part.movement) return 'How much it moves cannot be told: its shrinkage is not known.'
    if (job.moisture === job.serviceMoisture) return 'It is used at that moisture too and does not move.'
    const signed = (mm: number) => changeText(mm, (each) => length(each, job.units))
    const { tangential, radial, outOfRound } = part.movement
    return `Going to ${job.serviceMoisture} % MC the largest diameter changes by ${signed(tangential)} along the rings and ${signed(radial)} across them: ${length(Math.abs(outOfRound), job.units)} out of round.`
  }
}
