import { html, nothing, type TemplateResult } from 'lit'

/** Says that a page shows what was fetched before the connection went; nothing while there is one. */
export const lastSeenNotice = (now: boolean, again: () => void): TemplateResult | typeof nothing =>
  now
    ? nothing
    : html`<div class="notice no-print" role="status"><p>As last seen: no connection to the server. What you log is kept on this device and sent later. <button type="button" @click=${again}>Try again</button></p></div>`
