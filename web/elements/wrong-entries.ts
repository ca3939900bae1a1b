import { html, nothing } from 'lit'
import type { Breach } from '../../shared/problem.ts'

/** What is wrong with a file, listed above its fields; a click on one goes to it. `named` tells a field's name. */
export function wrongEntries(
  shown: readonly Breach[],
  named: (path: string) => string,
  jump: (path: string) => void,
) {
  if (shown.length === 0) return nothing
  const go = (event: Event, path: string) => {
    event.preventDefault()
    jump(path)
  }
  return html`<div class="problem">
    <p><b>${shown.length === 1 ? 'One entry needs' : `${shown.length} entries need`} putting right</b></p>
    <ul class="plain">
      ${shown.map(
        ({ path, message }) => html`<li>
          <a href="#" @click=${(event: Event) => go(event, path)}>${named(path)}</a>: ${message}
        </li>`,
      )}
    </ul>
  </div>`
}
