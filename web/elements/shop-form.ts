import { html, nothing, type TemplateResult } from 'lit'
import { customElement } from 'lit/decorators.js'
import { allowanceSources, defaultAllowances } from '../../shared/blank/allowances.ts'
import { yardGrades } from '../../shared/cutting/grade-names.ts'
import { operationKinds } from '../../shared/route/kinds.ts'
import { defaultPassCosts, type PassCosts } from '../../shared/route/passes.ts'
import { type WeekDay, weekDays } from '../../shared/schedule/days.ts'
import { nominals, shopSources, toolKinds } from '../../shared/shop.ts'
import { inches, lengthText } from '../../shared/units/length.ts'
import type { Lot } from '../../shared/wood/lot.ts'
import { entryAt, tellEntry } from '../entry.ts'
import { gritsInOrder } from '../odd-entries.ts'
import { lengthStyle, SessionController } from '../session.ts'
import { sentShop } from '../shop-entries.ts'
import './air-fields.ts'
import { allowanceWords } from './allowance-words.ts'
import { type Choice, noteField, textField, tickField } from './field.ts'
import { focusField } from './focus-field.ts'
import './lathes-form.ts'
import './lots-list.ts'
import { choicesOf, SettingsForm } from './settings-form.ts'
import './yards-form.ts'

const steels: Choice[] = [
  ['carbon', 'carbon'],
  ['hss', 'high-speed'],
  ['powder', 'powder metal'],
]

const dayNames: Record<WeekDay, string> = {
  mon: 'Monday',
  tue: 'Tuesday',
  wed: 'Wednesday',
  thu: 'Thursday',
  fri: 'Friday',
  sat: 'Saturday',
  sun: 'Sunday',
}

const idOf = (title: string) => title.toLowerCase().replaceAll(/[^a-z]+/g, '-')

/** Every setting of the shop, each with where its default comes from. Sends `entry` with path and value. */
@customElement('shop-form')
export class ShopForm extends SettingsForm {
  constructor() {
    super()
    new SessionController(this)
  }

  /** Brings the cursor to the field of an error, or as near to it as there is one. */
  focusField(path: string) {
    focusField(this.renderRoot, path)
  }

  private section(title: string, body: TemplateResult) {
    const id = idOf(title)
    return html`<section class="card" aria-labelledby=${id}><h2 id=${id} tabindex="-1">${title}</h2>${body}</section>`
  }

  private goTo(title: string) {
    const heading = this.renderRoot.querySelector<HTMLElement>(`#${idOf(title)}`)!
    heading.focus()
    heading.scrollIntoView({ block: 'start' })
  }

  override render() {
    const sections: [string, TemplateResult][] = [
      ['The shop', this.itself()],
      ['Lathes', this.lathes()],
      ['Turning tools', this.tools()],
      ['Stock and prices', this.stock()],
      ['Buying and sawing', this.sawing()],
      ['Yards', this.yards()],
      ['Allowances', this.allowances()],
      ['Spares', this.spares()],
      ['Sanding and sharpening', this.edges()],
      ['Days and people', this.days()],
      ['Time', html`${this.time()}${this.changes()}`],
      ['Price', this.price()],
      ['Woods of the shop', this.ownWoods()],
      [
        'Air of the shop',
        html`<air-fields data-path="air" .file=${this.file} .errors=${this.errors}></air-fields>`,
      ],
      ['Lots of wood', this.lots()],
    ] // prettier-ignore
    return html`
      <div class="page">
        <nav class="buttons no-print" aria-label="Settings">
          ${sections.map(([title]) => html`<button type="button" @click=${() => this.goTo(title)}>${title}</button>`)}
        </nav>
        ${sections.map(([title, body]) => this.section(title, body))}
      </div>
    `
  }

  private itself() {
    return html`
      <div class="fields">
        ${this.field('name', 'Name of the shop', { wide: true })} ${this.field('currency', 'Currency', { hint: 'three letters, such as USD or EUR' })}
        ${this.choice('units', 'Lengths without a unit are', [
          ['in', 'inches'],
          ['mm', 'millimetres'],
        ])}
        ${this.field('calipers', 'Calipers that can stay set', { unit: 'calipers' })}
      </div>
      ${noteField({
        path: 'heading',
        label: 'Heading of prints: address and the like',
        value: this.text('heading'),
        error: this.errors.get('heading'),
        enter: (text) => tellEntry(this, 'heading', text),
      })}
    `
  }

  private lathes() {
    return html`<lathes-form .file=${this.file} .errors=${this.errors}></lathes-form>`
  }

  private tools() {
    const blank = { name: '', kind: 'spindle-gouge', width: '', steel: 'hss' }
    return this.list(
      'tools',
      'tool',
      blank,
      (at) => html`
      ${this.field(`${at}.name`, 'Name', { wide: true })} ${this.choice(`${at}.kind`, 'Kind', choicesOf(toolKinds))}
      ${this.length(`${at}.width`, 'Width')} ${this.choice(`${at}.steel`, 'Steel', steels)}
      ${this.field(`${at}.piecesPerEdge`, 'Pieces between touch-ups', { unit: 'pieces', placeholder: 'by the table' })}
      ${this.lives(`${at}.lives`)}
    `,
    )
  }

  /** Lives of one tool's edge; they hold where no pieces between touch-ups are set. */
  private lives(path: string) {
    return html`<details class="lives" ?open=${this.rows(path).length > 0}>
      <summary>Lives of its edge, as counted</summary>
      <p class="hint">They come before the table, and hold for other jobs too: scaled for the wood and, where the speed at the rim was noted (mm of diameter × rpm ÷ 19,100 is m/s), for speed. Pieces between touch-ups, where they are set, come first. The Rack offers what your log says.</p>
      ${this.list(
        path,
        'counted life',
        { minutes: '' },
        (at) => html`
        ${this.field(`${at}.minutes`, 'Slicing between touch-ups', { unit: 'min' })}
        ${this.field(`${at}.rim`, 'Speed at the rim', { unit: 'm/s', placeholder: 'not noted' })}
        ${this.field(`${at}.hardnessN`, 'Side hardness of the wood', { unit: 'N', placeholder: '5000' })}
      `,
      )}
    </details>`
  }

  private stock() {
    return this.list(
      'stock',
      'thickness',
      { species: '*', nominal: '8/4' },
      (at) => html`
      ${this.choice(`${at}.species`, 'Wood', this.woodChoices)} ${this.choice(`${at}.nominal`, 'Nominal', choicesOf(nominals))}
      ${this.field(`${at}.pricePerBoardFoot`, 'Price per board foot', { unit: String(this.file.currency ?? ''), placeholder: 'not known' })}
      ${this.tick(`${at}.surfaced`, 'Surfaced')}
    `,
    )
  }

  private sawing() {
    return html`
      <div class="fields">
        ${this.choice('grade', 'Grade bought', choicesOf(yardGrades))} ${this.field('extraWood', 'Extra for choice', { unit: '%' })}
        ${this.choice('priceBy', 'Boards are billed', [
          ['tally', 'by tally'],
          ['exact', 'as they measure'],
        ])}
        ${this.length('kerf', 'Kerf of the saw')} ${this.length('endTrim', 'Trimmed off each end')}
        ${this.length('edgeTrim', 'Trimmed off each edge')} ${this.length('minOffcut', 'Offcuts kept from')}
      </div>
      <h3>Boards the yard usually brings</h3>
      ${this.list('yardBoards', 'board', { width: '', length: '' }, (at) => html`${this.length(`${at}.width`, 'Width')} ${this.length(`${at}.length`, 'Length')}`)}
    `
  }

  private yards() {
    return html`<yards-form .file=${this.file} .woods=${this.woods} .errors=${this.errors}></yards-form>`
  }

  private allowances() {
    const defaults = defaultAllowances(this.file.units)
    const own = Object.entries(allowanceWords).map(([name, words]) => {
      const source = allowanceSources[name as keyof typeof allowanceSources]
      const fallback = defaults[name as keyof typeof defaults]
      if (name === 'practice')
        return this.field('allowances.practice', words, {
          unit: 'blanks',
          hint: source,
          placeholder: String(fallback),
        })
      if (name === 'bowPerMm') return this.bow(words, source, fallback)
      return this.length(`allowances.${name}`, words, {
        hint: source,
        placeholder: lengthText(fallback, lengthStyle(this.file.units)),
      })
    })
    return html`<p class="soft small">Where nothing is entered the figure in grey is used.</p><div class="fields">${own}</div>`
  }

  /** Kept inside per mm, spoken of per foot. */
  private bow(words: string, source: string, perMm: number) {
    const stored = entryAt(this.file, 'allowances.bowPerMm')
    const style = lengthStyle(this.file.units)
    const typed = entryAt(this.file, 'allowances.bow')
    return textField({
      path: 'allowances.bow',
      label: words,
      hint: source,
      placeholder: lengthText(perMm * inches(12), style),
      value:
        typed !== undefined
          ? String(typed)
          : typeof stored === 'number'
            ? lengthText(stored * inches(12), style)
            : '',
      error: this.errors.get('allowances.bow'),
      enter: (text) => {
        tellEntry(this, 'allowances.bowPerMm', undefined)
        tellEntry(this, 'allowances.bow', text)
      },
    })
  }

  private spares() {
    return html`<div class="fields">
      ${this.field('spareConfidence', 'Confidence that the blanks suffice', { unit: '%' })}
      ${this.field('record.made', 'Pieces made, on your record', { unit: 'pieces', hint: shopSources.record ?? '' })}
      ${this.field('record.spoiled', 'Spoiled of them', { unit: 'pieces' })}
      ${this.errors.has('record') ? html`<p class="error">${this.errors.get('record')}</p>` : nothing}
    </div>`
  }

  /** The grits where they do not go from coarse to fine. */
  private oddGrits() {
    const { grits } = sentShop(this.file) as { grits?: unknown }
    const read = Array.isArray(grits) ? grits.filter((grit) => typeof grit === 'number') : []
    return gritsInOrder(read)
      ? nothing
      : html`<p class="caution"><span>The grits do not go from coarse to fine: a coarser one after a finer one scratches anew.</span></p>`
  }

  private edges() {
    return html`${this.oddGrits()}<div class="fields">
      ${this.field('grits', 'Grits, in order', { hint: shopSources.grits ?? '' })}
      ${this.field('touchUpMinutes', 'A touch-up takes', { unit: 'min' })} ${this.field('regrindMinutes', 'A regrind takes', { unit: 'min' })}
      ${this.field('touchUpsPerRegrind', 'Touch-ups between regrinds', { unit: 'touch-ups' })}
    </div>`
  }

  /** What is changed between operations; minutes each. */
  private changes() {
    const minutes = (name: keyof PassCosts, label: string) =>
      this.field(`changes.${name}`, label, { unit: 'min', placeholder: String(defaultPassCosts[name]) })
    return html`<details ?open=${Object.keys((entryAt(this.file, 'changes') as object | undefined) ?? {}).length > 0}>
      <summary>Minutes of what is changed at the lathe</summary>
      <p class="hint">They decide between one mounting and several, and between resetting calipers and gauges. ${shopSources.changes}</p>
      <div class="fields">
        ${minutes('mounting', 'Mounting a blank')} ${minutes('toolChange', 'Laying one tool down, taking another up')}
        ${minutes('speedChange', 'Setting another speed')} ${minutes('reset', 'Setting a caliper')} ${minutes('restMove', 'Moving the tool rest')}
        ${this.field('gaugeMinutes', 'Making one gap gauge', { unit: 'min', hint: shopSources.gaugeMinutes ?? '' })}
      </div>
    </details>`
  }

  /** Who works and when. */
  private days() {
    const worked = (entryAt(this.file, 'workDays') as string[] | undefined) ?? []
    const tick = (day: WeekDay) =>
      tickField({
        path: `workDays.${day}`,
        label: dayNames[day],
        on: worked.includes(day),
        enter: (on) =>
          tellEntry(
            this,
            'workDays',
            weekDays.filter((each) => (each === day ? on : worked.includes(each))),
          ),
      })
    return html`<div class="fields">
        ${this.field('people', 'People at work on batches', { unit: 'people' })} ${this.field('hoursPerDay', 'Hours at the bench', { unit: 'h a day each' })}
        ${this.field('closed', 'Closed on', { hint: 'days such as 2026-12-25, with commas between', placeholder: 'none', wide: true })}
      </div>
      <fieldset data-path="workDays">
        <legend>Days of the week the shop works</legend>
        <div class="buttons">${weekDays.map(tick)}</div>
        ${this.errors.has('workDays') ? html`<p class="error">at least one day must be ticked</p>` : nothing}
      </fieldset>`
  }

  private time() {
    const factors = (entryAt(this.file, 'minuteFactors') as Record<string, unknown> | undefined) ?? {}
    return html`
      <div class="fields">
        ${this.field('learningRate', 'Learning rate', { unit: '%' })}
        ${this.choice('learningForm', 'The rate is of', [
          ['unit', 'the minutes of each piece'],
          ['average', 'the average of all pieces so far'],
        ])}
        ${this.field('restAllowance', 'Added for rest and interruption', { unit: '%' })}
        ${this.field('timeSpread', 'Spread of a batch’s time', { unit: '%' })}
      </div>
      <details ?open=${Object.keys(factors).length > 0}>
        <summary>Your own factor on the minutes of an operation</summary>
        <p class="hint">1 is the table’s time, 1.2 a fifth longer. ${shopSources.minuteFactors}</p>
        <div class="fields">
          ${Object.keys(operationKinds).map((kind) =>
            this.field(`minuteFactors.${kind}`, kind.replaceAll('-', ' '), { placeholder: '1', unit: '×' }),
          )}
        </div>
      </details>
    `
  }

  private price() {
    const unit = String(this.file.currency ?? '')
    return html`<div class="fields">
      ${this.field('labourPerHour', 'Labour', { unit: `${unit} an hour` })} ${this.field('marginOnCost', 'Margin on cost', { unit: '%' })}
      ${this.field('finishPerSquareMetre', 'Finish', { unit: `${unit} per m²` })}
      ${this.field('abrasivePerPiece', 'Abrasives', { unit: `${unit} a piece` })} ${this.field('minimumCharge', 'Least charge', { unit })}
    </div>`
  }

  private lots() {
    const lots = (this.file.lots as Lot[] | undefined) ?? []
    return html`<lots-list .lots=${lots} .woods=${this.woods} .units=${this.file.units}></lots-list>`
  }

  private ownWoods() {
    const blank = {
      key: '',
      name: '',
      kind: 'hardwood',
      source: 'the shop’s own',
      confidence: 'shop',
      safe: false,
    }
    return html`
      <p class="hint">Woods the handbook lacks, or with figures of your own. They carry the mark of the shop’s own figures.</p>
      ${this.list(
        'species',
        'wood',
        blank,
        (at) => html`
        ${this.field(`${at}.name`, 'Name')} ${this.field(`${at}.key`, 'Key', { hint: 'lower case, words joined by -' })}
        ${this.choice(`${at}.kind`, 'Kind', choicesOf(['hardwood', 'softwood']))} ${this.field(`${at}.source`, 'Source of the figures')}
        ${this.field(`${at}.sgGreen`, 'Specific gravity, green volume')} ${this.field(`${at}.sg12`, 'Specific gravity at 12 % MC')}
        ${this.field(`${at}.moeGPa`, 'Stiffness', { unit: 'GPa' })} ${this.field(`${at}.hardnessN`, 'Side hardness', { unit: 'N' })}
        ${this.field(`${at}.shrinkRadialPct`, 'Radial shrinkage', { unit: '%' })}
        ${this.field(`${at}.shrinkTangentialPct`, 'Tangential shrinkage', { unit: '%' })}
        ${this.field(`${at}.cr`, 'Radial change per 1 % MC', { unit: '%' })} ${this.field(`${at}.ct`, 'Tangential change per 1 % MC', { unit: '%' })}
      `,
      )}
    `
  }
}
