import type { Operation } from '../../shared/route/operation.ts'
import { isTurning, restText } from '../../shared/route/order-rows.ts'
import { type LengthStyle, lengthFigure, lengthText, nm } from '../../shared/units/length.ts'
import { rpmFigure } from './operation-words.ts'

/** What the turner sets anew before an operation, each in words; absent where it stays as it was. */
export interface LatheChanges {
  tool?: string
  speed?: string
  rest?: string
  caliper?: string
}

/** How the lathe stands after some operations. */
interface Standing {
  tool?: string
  rpm?: number
  rest?: number | 'away'
  caliper?: number
}

/** The rest is taken away to sand and to coat, and stays where it is for whatever else names no position. */
const restOf = ({ restPosition, stage }: Operation): number | 'away' | undefined =>
  restPosition ?? (stage === 'sanding' || stage === 'finish' ? 'away' : undefined)

function standingBefore(operations: readonly Operation[], index: number): Standing {
  const standing: Standing = {}
  for (const operation of operations.slice(0, index).filter(isTurning)) {
    standing.tool = operation.tool
    standing.rpm = operation.rpm ?? standing.rpm
    standing.rest = operation.restThrough ?? restOf(operation) ?? standing.rest
    standing.caliper = operation.caliper ?? standing.caliper
  }
  return standing
}

/**
 * What is set anew before the operation at `index`, against how the operations before it left the lathe; nothing for
 * work away from the lathe.
 */
export function latheChanges(
  operations: readonly Operation[],
  index: number,
  style: LengthStyle,
): LatheChanges {
  const operation = operations[index]
  if (!operation || !isTurning(operation)) return {}
  const before = standingBefore(operations, index)
  const { tool, rpm, caliper } = operation
  const rest = restOf(operation)
  const figure = (mm: number | undefined) => (mm === undefined ? undefined : lengthFigure(mm, style))
  return {
    ...(tool !== before.tool && { tool: fromTo(before.tool, tool) }),
    ...(rpm !== undefined &&
      rpm !== before.rpm && {
        speed: `${fromTo(before.rpm === undefined ? undefined : rpmFigure(before.rpm), rpmFigure(rpm))} rpm`,
      }),
    ...(rest !== undefined &&
      (rest !== before.rest || operation.restThrough !== undefined) && {
        rest:
          rest === 'away'
            ? 'rest away'
            : `rest ${operation.restThrough ? 'from' : 'to'} ${restText(operation)}`,
      }),
    ...(caliper !== undefined &&
      (before.caliper === undefined || nm(caliper) !== nm(before.caliper)) && {
        caliper: `caliper ${fromTo(figure(before.caliper), lengthText(caliper, style))}`,
      }),
  }
}

const fromTo = (from: string | undefined, to: string): string => (from === undefined ? to : `${from} → ${to}`)

/** All of it in one line, e.g. `1 in skew → 3/8 in spindle gouge, 1200 → 1700 rpm, rest to 2`. */
export const changesText = ({ tool, speed, rest, caliper }: LatheChanges): string =>
  [tool, speed, rest, caliper].filter((text) => text !== undefined).join(', ')
