import type { Match, SetFile } from '../../../shared/matching/set.ts'
import { type LengthStyle, lengthFigure, lengthText } from '../../../shared/units/length.ts'
import { unitOf } from '../../prints/figures.ts'
import { fineFigure, fineText } from './fine.ts'
import { heading, paragraph, table } from './page.ts'

const fine = (mm: number | undefined, style: LengthStyle): string =>
  mm === undefined ? '' : fineFigure(mm, style)

function stationTable({ stations }: Match, set: SetFile, style: LengthStyle): string[] {
  const unit = unitOf(style)
  const number = { width: 9, align: 'right' as const }
  return table(
    [
      { head: 'station', width: 16 },
      { head: 'n', width: 4, align: 'right' },
      { head: `target ${unit}`, ...number },
      { head: `mean ${unit}`, ...number },
      { head: `spread ${unit}`, ...number },
      { head: `sd ${unit}`, ...number },
      { head: 'cpk', width: 7, align: 'right' },
    ],
    stations.map((station, i) => ({
      cells: [
        station.key,
        String(station.n),
        lengthFigure(set.stations[i]!.target, style),
        fine(station.mean, style),
        fine(station.spread, style),
        fine(station.sd, style),
        station.cpk?.toFixed(2) ?? '',
      ],
      caution:
        [station.why, ...(station.chart?.signals ?? []).map(({ piece, rule }) => `${piece}: ${rule}`)]
          .filter(Boolean)
          .join('; ') || undefined,
    })),
  )
}

function pieceTable({ pieces }: Match): string[] {
  const rows = pieces.map(({ key, verdict, worst, why }) => ({
    cells: [key, verdict ?? why ?? '', worst ?? ''],
  }))
  return table(
    [
      { head: 'piece', width: 40 },
      { head: 'verdict', width: 20 },
      { head: 'worst at', width: 16 },
    ],
    rows,
  )
}

function bringDownLines({ bringDown }: Match, style: LengthStyle): string[] {
  const targets = Object.entries(bringDown.targets).map(
    ([station, mm]) => `${station} to ${lengthText(mm, style)}`,
  )
  const cuts = bringDown.cuts.map(
    ({ piece, station, remove }) =>
      `${piece} at ${station}: take ${fineText(remove, style)} off the diameter`,
  )
  const spoiled = bringDown.spoiled.map(
    ({ piece, station, why }) => `${piece} at ${station} is spoiled: ${why}`,
  )
  if (targets.length + cuts.length + spoiled.length === 0) return []
  return [
    ...heading('Bring down'),
    ...(targets.length > 0 ? paragraph(`New targets: ${targets.join(', ')}.`) : []),
    ...cuts.flatMap((text) => paragraph(text, { lead: '  - ' })),
    ...spoiled.flatMap((text) => paragraph(text, { lead: '  ! ' })),
  ]
}

/** A match for a person to read and print. */
export function matchText(match: Match, set: SetFile, style: LengthStyle): string {
  const { chosen } = match
  const lines = [
    'THE SET',
    ...heading('Stations'),
    ...stationTable(match, set, style),
    ...heading('Pieces'),
    ...pieceTable(match),
    ...(chosen
      ? [
          ...heading('Chosen'),
          ...paragraph(
            `${chosen.pieces.join(', ')}: they differ by at most ${(chosen.spread * 100).toFixed(0)} % of the tolerance${chosen.proven ? ', proven the least' : ''}.`,
          ),
        ]
      : []),
    ...bringDownLines(match, style),
  ]
  return `${lines.join('\n')}\n`
}
