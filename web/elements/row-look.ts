import { css } from 'lit'

/** Rows of what was entered, each with what can be done to it at its end. */
export const rowLook = css`
  li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 0 var(--space-3);
    align-items: center;
    padding: var(--space-2) 0;
    border-bottom: 1px solid var(--line);
  }
`
