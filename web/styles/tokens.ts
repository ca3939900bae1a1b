import { css } from 'lit'

/** Colours, type and spacing of every page; custom properties reach into every element. */
export const tokens = css`
  :root {
    color-scheme: light dark;
    --ground: light-dark(#f4ede0, #191613);
    --sheet: light-dark(#fcf8f0, #24201b);
    --well: light-dark(#ebe2d1, #100e0c);
    --ink: light-dark(#221b13, #f1e9dc);
    --ink-soft: light-dark(#574a3a, #c4b8a5);
    --line: light-dark(#d8cbb5, #433b32);
    --edge: light-dark(#7f705a, #93846f);
    --accent: light-dark(#1c4a84, #8fbcf2);
    --accent-ink: light-dark(#ffffff, #10202f);
    --accent-wash: light-dark(#dfe7f0, #1f2f42);
    --in: light-dark(#1e6333, #86d39b);
    --in-wash: light-dark(#dcebd9, #1b3322);
    --over: light-dark(#7d4a00, #f0bd6a);
    --over-wash: light-dark(#f7e6c4, #3d2e12);
    --under: light-dark(#9c1f16, #ffa196);
    --under-wash: light-dark(#f8ddd6, #45201c);
    --wood: light-dark(#c4935a, #a4733f);
    --kerf: light-dark(#3f3120, #0d0a07);

    --sans: system-ui, -apple-system, 'Segoe UI', Roboto, 'Noto Sans', 'DejaVu Sans', sans-serif;
    --serif: ui-serif, 'Iowan Old Style', 'Palatino Linotype', Palatino, 'Noto Serif', 'DejaVu Serif', Georgia, serif;
    --size-small: 0.875rem;
    --size: 1rem;
    --size-large: 1.25rem;
    --size-title: 1.75rem;
    --size-figure: 2rem;
    --space-1: 0.25rem;
    --space-2: 0.5rem;
    --space-3: 0.75rem;
    --space-4: 1rem;
    --space-6: 1.5rem;
    --touch: 2.75rem;
    --round: 0.375rem;
  }
  :root[data-theme='light'] {
    color-scheme: light;
  }
  :root[data-theme='dark'] {
    color-scheme: dark;
  }
  @media print {
    :root,
    :root[data-theme] {
      color-scheme: light;
      --ground: #fff;
      --sheet: #fff;
    }
  }
`
