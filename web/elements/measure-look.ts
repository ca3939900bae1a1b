import { css } from 'lit'

/** How the place in hand looks: figures, keys and buttons for dusty thumbs. */
export const measureLook = css`
  .entry {
    display: grid;
    gap: var(--space-3);
    grid-template-columns: minmax(0, 1fr);
  }
  .head {
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--space-3);
    align-items: baseline;
    justify-content: space-between;
  }
  .figures {
    display: grid;
    gap: var(--space-3);
    grid-template-columns: repeat(2, minmax(0, 1fr));
  }
  .figures.three {
    grid-template-columns: repeat(3, minmax(0, 1fr));
  }
  .figures input {
    min-height: 3.5rem;
    font-size: 1.625rem;
    font-weight: 700;
  }
  .figures input::placeholder {
    font-size: var(--size);
    font-weight: 400;
  }
  .more {
    display: grid;
    gap: var(--space-3);
    grid-template-columns: minmax(0, 1fr) auto;
    align-items: end;
  }
  .shapes {
    display: grid;
    gap: 0.375rem;
    grid-template-columns: repeat(8, minmax(0, 1fr));
  }
  .shapes button {
    flex-direction: column;
    gap: 0;
    min-height: 3.25rem;
    min-width: 0;
    padding: 0 0.125rem;
    font-size: var(--size-small);
    line-height: 1.2;
    touch-action: manipulation;
  }
  .shapes button[aria-pressed='true'] {
    background: var(--accent);
    border-color: var(--accent);
    color: var(--accent-ink);
  }
  .shapes kbd {
    font: inherit;
    font-weight: 400;
    text-transform: uppercase;
  }
  .send {
    display: grid;
    gap: var(--space-2);
    grid-template-columns: 1fr 1fr 1.6fr;
  }
  .send button {
    min-height: 3.5rem;
    padding: 0 var(--space-2);
  }
  @media (max-width: 46rem) {
    .entry {
      gap: var(--space-2);
    }
    .figures.three {
      gap: var(--space-2);
    }
    .figures.three input {
      font-size: 1.25rem;
    }
    .shapes button {
      min-height: 2.75rem;
    }
    .shapes {
      grid-template-columns: repeat(4, minmax(0, 1fr));
    }
  }
`

/** How the page lies: keys and drawing side by side, or together on one phone screen. */
export const measureBench = css`
  :host {
    padding-bottom: 1rem;
  }
  .bench {
    display: grid;
    gap: var(--space-4) var(--space-6);
    grid-template-columns: minmax(0, 1fr);
    align-items: start;
  }
  .bench > div {
    display: grid;
    gap: var(--space-4);
    grid-template-columns: minmax(0, 1fr);
    min-width: 0;
  }
  h1 {
    overflow-wrap: anywhere;
  }
  .growing {
    display: none;
  }
  @media (min-width: 60rem) {
    .bench {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    }
  }
  .hand {
    display: none;
  }
  /* The keys, the figures and the drawing stand on one phone screen: saving moves to the head. */
  @media (max-width: 46rem) {
    .page {
      gap: var(--space-3);
    }
    h1 {
      font-size: var(--size-large);
    }
    .hand {
      display: flex;
    }
    .growing {
      display: block;
      max-height: 6rem;
      overflow: hidden;
    }
    .entering {
      padding: var(--space-3);
    }
    save-bar {
      position: static;
    }
  }
`
