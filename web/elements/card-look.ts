import { css } from 'lit'

/** A card of a list: its name leads to what it is of, its buttons stand at its foot. */
export const cardLook = css`
  :host {
    grid-template-rows: auto auto 1fr auto;
  }
  .name {
    font-family: var(--serif);
    font-size: var(--size-large);
    font-weight: 600;
    overflow-wrap: anywhere;
    display: inline-flex;
    align-items: center;
    min-height: var(--touch);
    min-width: var(--touch);
  }
  .line {
    display: flex;
    gap: var(--space-2) var(--space-3);
    flex-wrap: wrap;
    align-items: baseline;
  }
`
