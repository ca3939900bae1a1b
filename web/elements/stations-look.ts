import { css } from 'lit'

/** Rows of stations: one line each where there is room, small cards where there is not. */
export const stationsLook = css`
  :host {
    container-type: inline-size;
    display: grid;
    gap: var(--space-3);
  }
  .heads,
  .row {
    display: grid;
    gap: var(--space-2);
    grid-template-columns: 1.5rem minmax(5rem, 1fr) minmax(5rem, 1fr) 7rem minmax(5.5rem, 1fr) minmax(6rem, 1.3fr) 2.75rem 2.75rem;
    align-items: end;
  }
  .heads {
    font-size: var(--size-small);
    font-weight: 600;
    color: var(--ink-soft);
    padding-bottom: var(--space-1);
    border-bottom: 1px solid var(--line);
  }
  .row {
    padding: var(--space-2) 0;
    border-bottom: 1px solid var(--line);
    align-items: start;
  }
  /* The small drawing above the stations is no place for the focus. */
  @media (max-width: 72rem) {
    .row :is(input, select, button) {
      scroll-margin-top: 7rem;
    }
  }
  .many .row {
    content-visibility: auto;
    contain-intrinsic-size: auto 4rem;
  }
  .row:focus-within {
    background: var(--accent-wash);
  }
  .index {
    min-height: var(--touch);
    display: flex;
    align-items: center;
    justify-content: center;
    font-weight: 650;
    color: var(--ink-soft);
  }
  .top {
    min-height: var(--touch);
    display: inline-flex;
    align-items: center;
    padding-left: var(--space-2);
  }
  .check .tick {
    justify-content: center;
    width: 100%;
  }
  .size label {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
  }
  label.quiet,
  .quiet {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  .cell,
  .tick {
    position: relative;
  }
  .whole,
  .open {
    grid-column: 2 / -1;
  }
  .open {
    display: grid;
    gap: var(--space-3);
    padding: var(--space-2) 0 var(--space-3);
  }
  @container (max-width: 40rem) {
    .heads {
      display: none;
    }
    .row {
      grid-template-columns: 1.5rem repeat(10, minmax(0, 1fr));
      column-gap: var(--space-1);
    }
    .at {
      grid-column: 2 / span 3;
    }
    .diameter {
      grid-column: 5 / span 3;
    }
    .then {
      grid-column: 8 / span 4;
    }
    .size {
      grid-column: 2 / span 3;
    }
    .name {
      grid-column: 5 / span 3;
    }
    .size.none {
      display: none;
    }
    .size.none + .name {
      grid-column: 2 / span 6;
    }
    .check {
      grid-column: 8 / span 2;
    }
    .more {
      grid-column: 10 / span 2;
    }
    .row label:not(.tick),
    .row label.quiet {
      position: static;
      width: auto;
      height: auto;
      overflow: hidden;
      clip-path: none;
      text-overflow: ellipsis;
    }
    .check,
    .more {
      align-self: end;
    }
    .check .tick {
      flex-direction: column-reverse;
      gap: var(--space-1);
    }
    .check .tick input {
      margin: 0.625rem 0;
    }
    .check .quiet {
      position: static;
      width: auto;
      height: auto;
      clip-path: none;
      font-size: var(--size-small);
      font-weight: 600;
      color: var(--ink-soft);
    }
    .index,
    .top {
      align-self: end;
    }
  }
`
