import { css } from 'lit'

/** The document itself: ground, type, paper. */
export const pageStyles = css`
  html {
    background: var(--ground);
    color: var(--ink);
    font: 100%/1.5 var(--sans);
    -webkit-text-size-adjust: 100%;
    scroll-padding-top: 1rem;
  }
  /* A bar at the foot of the window must not hide what has the focus. */
  html.with-save-bar {
    scroll-padding-bottom: 6rem;
  }
  body {
    margin: 0;
  }
  @page {
    margin: 12mm;
  }
  @media print {
    html {
      font-size: 80%;
    }
  }
`
