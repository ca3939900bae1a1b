import type { ShapeName, Span } from '../profile.ts'
import { bead } from './bead.ts'
import { cavetto } from './cavetto.ts'
import { cove } from './cove.ts'
import { curve } from './curve.ts'
import { ogee } from './ogee.ts'
import { ovolo } from './ovolo.ts'
import type { Shape } from './shape.ts'
import { square } from './square.ts'
import { straight } from './straight.ts'

const shapes: Record<ShapeName, Shape> = { straight, bead, cove, ovolo, cavetto, ogee, curve, square }

/** What the program knows about the shape of a span. */
export const shapeOf = (span: Span): Shape => shapes[span.shape]
