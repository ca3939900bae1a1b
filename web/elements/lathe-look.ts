import { css } from 'lit'

/** The whole screen: how far along above, the work between, what to mind and the two buttons below. */
export const latheLook = css`
  dialog {
    width: 100vw;
    height: 100dvh;
    max-width: none;
    max-height: none;
    margin: 0;
    padding: 0;
    border: 0;
    background: var(--sheet);
    color: var(--ink);
    overscroll-behavior: none;
  }
  dialog[open] {
    display: grid;
    grid-template: auto minmax(0, 1fr) auto auto / minmax(0, 1fr);
  }
  :is(dialog, .work, .mind) {
    touch-action: pan-y;
  }
  header {
    display: flex;
    align-items: center;
    justify-content: space-between;
    gap: var(--space-2);
    padding-left: var(--space-3);
    color: var(--ink-soft);
  }
  header .buttons {
    flex-wrap: nowrap;
    gap: 0;
  }
  header button {
    border-color: transparent;
    background: none;
  }
  .work {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    align-content: space-evenly;
    padding: 0 0.25rem;
    overflow-y: auto;
  }
  .set {
    padding: 0 0.25rem;
    border-left: 0.375rem solid transparent;
    min-width: 0;
  }
  .set.changed {
    border-left-color: var(--accent);
  }
  h2,
  .big {
    font-family: var(--sans);
    font-size: var(--words, 3.75rem);
    font-weight: 700;
    line-height: 1.04;
  }
  .big {
    min-width: 0;
    max-width: 100%;
  }
  .big.tool {
    font-weight: 500;
  }
  .tool + .beside {
    padding-top: calc(0.1 * var(--words, 3.75rem));
  }
  .big.number {
    text-align: left;
    font-size: var(--figures, 4.7rem);
    font-weight: 700;
  }
  .big .unit {
    font-size: 0.38em;
  }
  .broken :is(h2, .big) {
    overflow-wrap: anywhere;
    white-space: normal;
  }
  .close :is(.change, .why) {
    display: none;
  }
  .close .mind {
    padding-block: 0;
    font-size: 1rem;
  }
  .close .place p {
    font-size: 1.25rem;
  }
  .no-speed {
    color: var(--under);
  }
  .beside {
    font-size: clamp(1.0625rem, 2.2vh, 1.5rem);
    line-height: 1.2;
  }
  .side {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    column-gap: var(--space-3);
  }
  .side .beside {
    flex: 1 1 7.5rem;
  }
  .side .beside.short {
    flex-basis: 3.5rem;
  }
  .place {
    display: flex;
    align-items: center;
    gap: var(--space-3);
  }
  .place p {
    flex: none;
    font-size: clamp(1.25rem, 3vh, 2rem);
    font-weight: 600;
    line-height: 1.2;
  }
  .place turned-part {
    flex: 1;
    height: clamp(1.75rem, 5vh, 3.5rem);
  }
  .mind {
    display: grid;
    gap: var(--space-1);
    max-height: 45dvh;
    padding: var(--space-1) var(--space-2);
    overflow-y: auto;
    font-size: clamp(1rem, 2.4vh, 1.5rem);
    line-height: 1.25;
  }
  .change {
    padding-left: var(--space-2);
    border-left: 0.375rem solid var(--accent);
    font-weight: 600;
  }
  .caution {
    padding-block: var(--space-1);
    font-weight: 600;
  }
  footer {
    display: grid;
    grid-template-columns: minmax(5rem, 1fr) 4fr;
    gap: var(--space-2);
    padding: var(--space-2);
    border-top: 1px solid var(--line);
  }
  footer button {
    min-height: 4.25rem;
    padding: 0 var(--space-2);
    font-size: 1.25rem;
    line-height: 1.2;
  }
  footer .main {
    flex-direction: column;
    gap: 0;
  }
  footer .then {
    max-width: 100%;
    overflow: hidden;
    font-size: 1rem;
    font-weight: 500;
    white-space: nowrap;
    text-overflow: ellipsis;
  }
  @media (min-width: 44rem) {
    .work {
      grid-template-columns: minmax(0, 1.25fr) minmax(0, 1fr);
      align-items: center;
      column-gap: var(--space-6);
      padding: 0 var(--space-4);
    }
    .work.alone {
      grid-template-columns: minmax(0, 1fr);
    }
    .half {
      display: grid;
      gap: clamp(0.25rem, 2.5vh, 2rem);
    }
  }
  @media (max-height: 44rem) {
    footer {
      padding-block: var(--space-1);
    }
    footer button {
      min-height: 3.75rem;
    }
  }
  @media (max-height: 30rem) {
    header button,
    footer button {
      min-height: var(--touch);
    }
  }
`
