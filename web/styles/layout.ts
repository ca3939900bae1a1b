import { css } from 'lit'

/** Cards, tables, figures in a row, cautions and verdict marks. */
export const layout = css`
  .page {
    display: grid;
    gap: var(--space-6);
    grid-template-columns: minmax(0, 1fr);
  }
  .page-head {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-3);
    align-items: center;
    justify-content: space-between;
  }
  .card {
    display: grid;
    gap: var(--space-4);
    grid-template-columns: minmax(0, 1fr);
    align-content: start;
    padding: var(--space-4);
    background: var(--sheet);
    border: 1px solid var(--line);
    border-radius: var(--round);
    min-width: 0;
  }
  /* Labels, controls and notes of neighbours stand on common lines. */
  .fields {
    display: grid;
    gap: 0 var(--space-4);
    grid-template-columns: repeat(auto-fill, minmax(min(100%, 9.25rem), 1fr));
  }
  .fields > .field {
    grid-row: span 4;
    grid-template-rows: subgrid;
    row-gap: var(--space-1);
    margin-bottom: var(--space-4);
  }
  .fields > .field.wide {
    grid-column: span 2;
  }
  .fields > .field > label:not(.tick) {
    align-self: end;
  }
  .fields > .field > label.tick,
  .fields > .field > button {
    grid-row: 2;
  }
  .fields > .field > button {
    justify-self: start;
  }
  .columns {
    display: grid;
    gap: var(--space-6);
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 26rem), 1fr));
    align-items: start;
  }
  dl.figures {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-3) var(--space-6);
  }
  dl.figures > div {
    display: grid;
    align-content: start;
  }
  dl.figures dt {
    font-size: var(--size-small);
    color: var(--ink-soft);
  }
  dl.figures dd {
    font-size: var(--size-large);
    font-weight: 650;
    line-height: 1.25;
  }
  dl.figures dd.note {
    font-size: var(--size-small);
    font-weight: 400;
    color: var(--ink-soft);
  }
  table {
    width: 100%;
    border-collapse: collapse;
  }
  caption {
    text-align: left;
    color: var(--ink-soft);
    font-size: var(--size-small);
    padding-bottom: var(--space-1);
  }
  th,
  td {
    padding: var(--space-2);
    border-bottom: 1px solid var(--line);
    text-align: left;
    vertical-align: top;
  }
  th {
    font-size: var(--size-small);
    color: var(--ink-soft);
    font-weight: 600;
    vertical-align: bottom;
  }
  tbody th {
    font-size: inherit;
    color: inherit;
    vertical-align: top;
  }
  td.number,
  th.number {
    text-align: right;
    white-space: nowrap;
  }
  /* A table that becomes a list of small cards on a narrow page; each cell names itself by data-label. */
  @media (max-width: 46rem) {
    table.stack,
    table.stack tbody,
    table.stack tr,
    table.stack td,
    table.stack tbody th {
      display: block;
    }
    table.stack caption {
      display: block;
    }
    table.stack thead {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    table.stack tr {
      padding: var(--space-2) 0;
      border-bottom: 1px solid var(--line);
    }
    table.stack td,
    table.stack tbody th {
      display: flex;
      justify-content: space-between;
      gap: var(--space-4);
      padding: var(--space-1) 0;
      border: 0;
      text-align: right;
    }
    table.stack tbody th {
      text-align: left;
    }
    table.stack td[data-label]::before {
      content: attr(data-label);
      color: var(--ink-soft);
      font-size: var(--size-small);
      text-align: left;
      flex: none;
    }
  }
  .caution {
    display: flex;
    gap: var(--space-2);
    padding: var(--space-2) var(--space-3);
    border-left: 4px solid var(--over);
    background: var(--over-wash);
    color: var(--ink);
    border-radius: 0 var(--round) var(--round) 0;
  }
  .caution::before {
    content: '▲';
    color: var(--over);
    flex: none;
  }
  .notice {
    padding: var(--space-3) var(--space-4);
    border-left: 4px solid var(--accent);
    background: var(--accent-wash);
    border-radius: 0 var(--round) var(--round) 0;
  }
  .problem {
    padding: var(--space-3) var(--space-4);
    border-left: 4px solid var(--under);
    background: var(--under-wash);
    color: var(--ink);
    border-radius: 0 var(--round) var(--round) 0;
  }
  .mark {
    display: inline-block;
    padding: 0.125rem var(--space-2);
    border-radius: 1rem;
    border: 1px solid currentColor;
    font-size: var(--size-small);
    font-weight: 600;
    white-space: nowrap;
    color: var(--ink-soft);
  }
  .mark.in {
    color: var(--in);
    background: var(--in-wash);
  }
  .mark.over {
    color: var(--over);
    background: var(--over-wash);
  }
  .mark.under {
    color: var(--under);
    background: var(--under-wash);
  }
  .mark.going {
    color: var(--accent);
    background: var(--accent-wash);
  }
  @media print {
    .card {
      border-color: #999;
    }
    /* Paper breaks blocks well and grids badly. */
    .page,
    .card {
      display: block;
    }
    .page > * + *,
    .card > * + * {
      margin-top: var(--space-3);
    }
    tr,
    li,
    .caution,
    .notice {
      break-inside: avoid;
    }
    h2,
    h3 {
      break-after: avoid;
    }
  }
`
