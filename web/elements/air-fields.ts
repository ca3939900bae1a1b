import { html, LitElement } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { shopSources } from '../../shared/shop.ts'
import { readTemperature, temperatureFigure, temperatureUnit } from '../../shared/units/temperature.ts'
import { moistureInAir } from '../../shared/wood/air.ts'
import { enteredNumber, tellEntry } from '../entry.ts'
import type { ShopFile } from '../shop-entries.ts'
import { pageWear } from '../styles/all.ts'
import { textField } from './field.ts'

/** The air as it stands in the settings: read figures or what was typed. */
type EnteredAir = Partial<Record<'temperatureC' | 'humidityPct', number | string>>

/** The air of the shop, and what wood comes to in it. Sends `entry`. */
@customElement('air-fields')
export class AirFields extends LitElement {
  static override styles = pageWear
  static override shadowRootOptions = { ...LitElement.shadowRootOptions, delegatesFocus: true }

  @property({ attribute: false }) file!: ShopFile
  @property({ attribute: false }) errors: ReadonlyMap<string, string> = new Map()

  private get air(): EnteredAir {
    return (this.file.air as EnteredAir | undefined) ?? {}
  }

  /** An emptied field takes the air away with it where it was the last. */
  private enter(name: keyof EnteredAir, text: string) {
    const other = this.air[name === 'temperatureC' ? 'humidityPct' : 'temperatureC']
    if (text.trim() === '' && other === undefined) tellEntry(this, 'air', undefined)
    else tellEntry(this, `air.${name}`, text)
  }

  override render() {
    const { units } = this.file
    const { temperatureC, humidityPct } = this.air
    return html`
      <div class="page">
        <div class="fields">
          ${textField({
            path: 'air.temperatureC',
            label: 'Temperature',
            unit: temperatureUnit(units),
            value:
              typeof temperatureC === 'number'
                ? temperatureFigure(temperatureC, units)
                : (temperatureC ?? ''),
            placeholder: 'not measured',
            error: this.errors.get('air.temperatureC'),
            enter: (text) => this.enter('temperatureC', text),
          })}
          ${textField({
            path: 'air.humidityPct',
            label: 'Humidity',
            unit: '%',
            inputmode: 'decimal',
            value: String(humidityPct ?? ''),
            placeholder: 'not measured',
            error: this.errors.get('air.humidityPct'),
            enter: (text) => this.enter('humidityPct', text),
          })}
        </div>
        <p role="status">${this.told()}</p>
        <p class="hint">${shopSources.air}</p>
      </div>
    `
  }

  private told() {
    const { temperatureC, humidityPct } = this.air
    const celsius = temperatureC === undefined ? undefined : readTemperature(temperatureC, this.file.units)
    const humidity = typeof humidityPct === 'string' ? enteredNumber(humidityPct) : humidityPct
    const wrong = this.errors.has('air.temperatureC') || this.errors.has('air.humidityPct')
    return celsius === undefined || typeof humidity !== 'number' || wrong
      ? 'With both, each job says what its wood comes to in the shop, and warns where it is used at another moisture.'
      : `Wood left in this air comes to ${moistureInAir({ temperatureC: celsius, humidityPct: humidity }).toFixed(1)} % MC.`
  }
}
