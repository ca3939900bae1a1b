import { html } from 'lit'
import { customElement } from 'lit/decorators.js'
import { pulleySteps } from '../../shared/turning/pulleys.ts'
import { readLength } from '../../shared/units/length.ts'
import { entryAt, tellEntry } from '../entry.ts'
import { sentShop } from '../shop-entries.ts'
import { choiceField } from './field.ts'
import { SettingsForm } from './settings-form.ts'

type Drive = 'steps' | 'pulleys' | 'range'
/** What each way to tell the speeds starts with. */
const emptySpeeds: Record<Drive, Record<string, string>> = {
  steps: { steps: '' },
  pulleys: { motorRpm: '', motorPulleys: '', spindlePulleys: '' },
  range: { least: '', most: '' },
}
const blank = {
  name: '',
  betweenCentres: '',
  swing: '',
  swingOverRest: '',
  speeds: emptySpeeds.steps,
  restLength: '',
}
const LIST_OF_LENGTHS = 'with semicolons between'

/** The lathes of the shop: sizes, tool rests, and speeds by steps, pulleys or range. Sends `entry`. */
@customElement('lathes-form')
export class LathesForm extends SettingsForm {
  override render() {
    return this.list('lathes', 'lathe', blank, (at) => this.lathe(at))
  }

  private lathe(at: string) {
    const drive = this.drive(at)
    return html`
      ${this.field(`${at}.name`, 'Name', { wide: true })} ${this.length(`${at}.betweenCentres`, 'Between centres')}
      ${this.length(`${at}.swing`, 'Swing over the bed', { hint: 'twice the centre height' })}
      ${this.length(`${at}.swingOverRest`, 'Swing over the rest base')} ${this.length(`${at}.restLength`, 'Length of the tool rest')}
      ${this.length(`${at}.rests`, 'Other tool rests', { hint: `${LIST_OF_LENGTHS}; the longest that the blank takes is mounted`, placeholder: 'none' })}
      ${choiceField({
        path: `${at}.speeds`,
        label: 'Speeds',
        value: drive,
        choices: [
          ['steps', 'in steps'],
          ['pulleys', 'by pulleys'],
          ['range', 'any in a range'],
        ],
        error: this.errors.get(`${at}.speeds`),
        enter: (kind) => tellEntry(this, `${at}.speeds`, emptySpeeds[kind as Drive]),
      })}
      ${this.speeds(at, drive)}
      ${this.field(`${at}.limitRpm`, 'Limit of chuck or maker’s plate', { unit: 'rpm', placeholder: 'none' })}
    `
  }

  private drive(at: string): Drive {
    const speeds = (entryAt(this.file, `${at}.speeds`) ?? {}) as object
    const tells = (kind: Drive) => Object.keys(emptySpeeds[kind]).some((name) => name in speeds)
    return tells('pulleys') ? 'pulleys' : tells('range') ? 'range' : 'steps'
  }

  private speeds(at: string, drive: Drive) {
    if (drive === 'range')
      return html`${this.field(`${at}.speeds.least`, 'Slowest', { unit: 'rpm' })} ${this.field(`${at}.speeds.most`, 'Fastest', { unit: 'rpm' })}`
    if (drive === 'steps')
      return this.field(`${at}.speeds.steps`, 'Steps', {
        unit: 'rpm',
        hint: 'with commas between',
        wide: true,
      })
    const steps = this.stepsByPulleys(at)
    return html`
      ${this.field(`${at}.speeds.motorRpm`, 'Motor', { unit: 'rpm', hint: 'as its plate says, under load' })}
      ${this.length(`${at}.speeds.motorPulleys`, 'Pulleys on the motor', { hint: `diameters where the belt runs, ${LIST_OF_LENGTHS}` })}
      ${this.length(`${at}.speeds.spindlePulleys`, 'Pulleys on the spindle', { hint: `each facing that of the motor, in the same order${steps ? `; steps ${steps.join(', ')} rpm, the maker’s plate comes first` : ''}` })}
    `
  }

  /** The steps as far as the pulleys can be read by now; none until they can. */
  private stepsByPulleys(at: string): number[] | undefined {
    const speeds = entryAt(sentShop(this.file), `${at}.speeds`) as Record<string, unknown>
    const diameters = (list: unknown): number[] =>
      Array.isArray(list) ? list.map((each) => readLength(each, this.file.units) ?? Number.NaN) : []
    const [motorPulleys, spindlePulleys] = [diameters(speeds.motorPulleys), diameters(speeds.spindlePulleys)]
    const steps = pulleySteps({ motorRpm: Number(speeds.motorRpm), motorPulleys, spindlePulleys })
    const sound = steps.length > 0 && steps.every((step) => step > 0 && Number.isFinite(step))
    return sound && motorPulleys.length === spindlePulleys.length ? steps : undefined
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'lathes-form': LathesForm
  }
}
