import { base } from './base.ts'
import { controls } from './controls.ts'
import { layout } from './layout.ts'

/**
 * What a page wears: `static override styles = [...pageWear, css`…`]`. The page's content policy refuses `style`
 * attributes (Lit's `styleMap` too): use classes, SVG attributes, or `element.style` in script.
 */
export const pageWear = [base, controls, layout]
