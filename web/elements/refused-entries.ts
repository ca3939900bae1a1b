import { html, nothing } from 'lit'
import type { Breach } from '../../shared/problem.ts'
import type { Units } from '../../shared/units/length.ts'
import { inUnitsFirst, jobField } from '../field-words.ts'

/** Why the server took nothing of a sheet: everything is still kept here. */
export const refusedEntries = (refused: readonly Breach[], units: Units) =>
  refused.length === 0
    ? nothing
    : html`<div class="problem" role="alert">
        <p><b>Not stored; everything is kept on this device.</b></p>
        <ul class="plain">
          ${refused.map(
            ({ path, message }) =>
              html`<li>${path === 'name' ? 'Name of the profile' : jobField(path, [])}: ${inUnitsFirst(message, units)}</li>`,
          )}
        </ul>
      </div>`
