import { css } from 'lit'

/** Buttons, fields and their labels; nothing to press is smaller than 44 px. */
export const controls = css`
  button,
  a.button {
    display: inline-flex;
    align-items: center;
    justify-content: center;
    gap: var(--space-2);
    min-height: var(--touch);
    min-width: var(--touch);
    padding: 0 var(--space-4);
    border: 1.5px solid var(--edge);
    border-radius: var(--round);
    background: var(--sheet);
    color: var(--ink);
    font: inherit;
    font-weight: 600;
    text-decoration: none;
    cursor: pointer;
  }
  button:hover:not(:disabled),
  a.button:hover {
    background: var(--accent-wash);
    border-color: var(--accent);
  }
  button.main,
  a.button.main {
    background: var(--accent);
    border-color: var(--accent);
    color: var(--accent-ink);
  }
  button.main:hover:not(:disabled),
  a.button.main:hover {
    background: var(--accent);
    filter: brightness(1.12);
  }
  button.danger {
    border-color: var(--under);
    color: var(--under);
  }
  button.danger:hover:not(:disabled) {
    background: var(--under-wash);
  }
  button.icon {
    padding: 0;
    width: var(--touch);
    font-size: 1.125rem;
    line-height: 1;
  }
  button:disabled {
    color: var(--ink-soft);
    background: var(--well);
    border-style: dashed;
    cursor: not-allowed;
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2);
    align-items: center;
  }
  label,
  .label {
    display: block;
    font-size: var(--size-small);
    font-weight: 600;
    color: var(--ink-soft);
  }
  input,
  select,
  textarea {
    width: 100%;
    min-height: var(--touch);
    padding: var(--space-1) var(--space-2);
    border: 1.5px solid var(--edge);
    border-radius: var(--round);
    background: var(--sheet);
    color: var(--ink);
    font: inherit;
    font-variant-numeric: tabular-nums;
  }
  input:focus,
  select:focus,
  textarea:focus,
  input:focus-within {
    outline: 3px solid var(--accent);
    outline-offset: 2px;
  }
  input[type='file'] {
    padding: var(--space-1);
    max-width: 26rem;
  }
  input::file-selector-button {
    min-height: 2.1rem;
    padding: 0 var(--space-3);
    margin-right: var(--space-3);
    border: 1.5px solid var(--edge);
    border-radius: var(--round);
    background: var(--ground);
    color: var(--ink);
    font: inherit;
    font-weight: 600;
  }
  textarea {
    min-height: 5rem;
  }
  input:disabled,
  select:disabled,
  textarea:disabled {
    background: var(--well);
    color: var(--ink);
    opacity: 1;
    border-color: var(--line);
  }
  input[aria-invalid='true'],
  select[aria-invalid='true'] {
    border-color: var(--under);
    background: var(--under-wash);
  }
  input[type='checkbox'],
  input[type='radio'] {
    width: 1.5rem;
    height: 1.5rem;
    min-height: 0;
    margin: 0;
    flex: none;
    accent-color: var(--accent);
  }
  label.tick {
    display: inline-flex;
    align-items: center;
    gap: var(--space-2);
    min-height: var(--touch);
    font-size: var(--size);
    font-weight: 500;
    color: var(--ink);
    cursor: pointer;
  }
  .field {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-1);
    align-content: start;
    min-width: 0;
  }
  .with-unit {
    display: flex;
    align-items: center;
    gap: var(--space-2);
  }
  .with-unit > span {
    flex: none;
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  .hint {
    font-size: var(--size-small);
    color: var(--ink-soft);
  }
  .error {
    font-size: var(--size-small);
    font-weight: 600;
    color: var(--under);
    overflow-wrap: anywhere;
  }
  fieldset {
    border: 0;
    padding: 0;
    min-width: 0;
  }
  legend {
    padding: 0;
    font-family: var(--serif);
    font-size: var(--size-large);
    font-weight: 600;
  }
  summary {
    min-height: var(--touch);
    display: flex;
    align-items: center;
    gap: var(--space-2);
    font-weight: 600;
    cursor: pointer;
  }
  summary::before {
    content: '▸';
    color: var(--ink-soft);
  }
  details[open] > summary::before {
    content: '▾';
  }
`
