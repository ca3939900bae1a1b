import { css } from 'lit'

/** What every element starts from: type, headings, links, visible focus, figures in columns. */
export const base = css`
  :host {
    display: block;
    box-sizing: border-box;
    color: var(--ink);
    font-family: var(--sans);
    font-variant-numeric: tabular-nums;
  }
  :host([hidden]),
  [hidden] {
    display: none !important;
  }
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  h1,
  h2,
  h3 {
    font-family: var(--serif);
    font-weight: 600;
    line-height: 1.2;
    margin: 0;
    text-wrap: balance;
  }
  h1 {
    font-size: var(--size-title);
  }
  h2 {
    font-size: var(--size-large);
  }
  h3 {
    font-size: var(--size);
  }
  p,
  ul,
  ol,
  dl,
  dd,
  figure,
  fieldset {
    margin: 0;
  }
  ul.plain,
  ol.plain {
    list-style: none;
    padding: 0;
  }
  a {
    color: var(--accent);
    text-underline-offset: 0.15em;
  }
  :focus-visible {
    outline: 3px solid var(--accent);
    outline-offset: 2px;
    border-radius: 2px;
  }
  svg {
    display: block;
    max-width: 100%;
  }
  .soft {
    color: var(--ink-soft);
  }
  .small {
    font-size: var(--size-small);
  }
  .figure {
    font-size: var(--size-figure);
    font-weight: 650;
    line-height: 1.1;
  }
  .figure .unit,
  .unit {
    font-size: 0.6em;
    font-weight: 500;
    color: var(--ink-soft);
  }
  .number {
    text-align: right;
    white-space: nowrap;
  }
  .hidden-label {
    position: absolute;
    width: 1px;
    height: 1px;
    margin: -1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  @media print {
    .no-print,
    button {
      display: none !important;
    }
  }
`
