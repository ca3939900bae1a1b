import {
  legsFor,
  ringRadii,
  type Stand,
  type StandingLeg,
  setLayout,
  setPieces,
} from '../../shared/cutting/set-layout.ts'
import { frontRings, setWords, standText } from '../../shared/cutting/set-words.ts'
import type { CuttingSheet } from '../../shared/cutting/sheet.ts'
import { standsInSets } from '../../shared/plan.ts'
import { heading, paragraph } from './flow.ts'
import { BENCH_PT, ensure, ink, line, type Print } from './print.ts'
import { table } from './table.ts'

/** A leg as drawn, points: its side, from middle to middle beside and behind, room for the letters around. */
const LEG = 50
const BESIDE = 104
const BEHIND = 84
const ROUND = 20
const WIDTH = BESIDE + LEG + 2 * ROUND

/** Where each leg of a matching set stands, which face is which and how the rings run; nothing of other jobs. */
export function setDrawings(print: Print, sheet: CuttingSheet): void {
  const { plan, options } = print
  const { job, cutOrder } = plan
  const pieces = standsInSets(plan) ? setPieces(sheet, cutOrder.boards, job) : []
  if (pieces.length === 0) return
  const stands = setLayout(pieces, {
    legs: options.legs ?? legsFor(pieces.length),
    joints: job.joints,
  })
  heading(print, 'Set layout, seen from above', heightOf(stands[0]!) + 30)
  paragraph(print, setWords(stands))
  drawRows(print, stands)
  lettering(
    print,
    stands.flatMap(({ legs }) => legs),
  )
}

const rowsOf = ({ legs }: Stand): number => Math.ceil(legs.length / 2)
const heightOf = (stand: Stand): number => (rowsOf(stand) - 1) * BEHIND + LEG + 2 * ROUND + 12

/** As many stands side by side as the page takes. */
function drawRows(print: Print, stands: Stand[]): void {
  const { box } = print
  const beside = Math.max(1, Math.floor((box.right - box.left) / (WIDTH + 12)))
  for (let i = 0; i < stands.length; i += beside) {
    const row = stands.slice(i, i + beside)
    const height = Math.max(...row.map(heightOf))
    ensure(print, height)
    row.forEach((stand, k) => {
      const left = box.left + k * (WIDTH + 12)
      const top = print.y + height - heightOf(stand)
      centred(
        print,
        stands.length > 1 ? `stand ${i + k + 1}, front` : 'front',
        left + WIDTH / 2,
        print.y + height - 12,
      )
      stand.legs.forEach((leg, place) => {
        const y = top + ROUND + LEG / 2 + (rowsOf(stand) - 1 - Math.floor(place / 2)) * BEHIND
        drawLeg(
          print,
          leg,
          left + ROUND + LEG / 2 + { left: 0, middle: BESIDE / 2, right: BESIDE }[leg.side],
          y,
        )
      })
    })
    print.y += height + 6
  }
}

function drawLeg(print: Print, { piece, faces, heart, assumed }: StandingLeg, x: number, y: number): void {
  const { doc, plan } = print
  const half = LEG / 2
  const scale = LEG / plan.blank.sawn
  doc.save()
  doc.rect(x - half, y - half, LEG, LEG).clip()
  doc.lineWidth(0.5)
  if (assumed) doc.dash(4, { space: 3 })
  for (const radius of heart ? ringRadii(heart, plan.blank.sawn / 2) : [])
    doc.circle(x + heart!.right * scale, y - heart!.back * scale, radius * scale).stroke('#777')
  doc.restore()
  doc
    .lineWidth(1)
    .rect(x - half, y - half, LEG, LEG)
    .stroke('#000')
  doc.lineWidth(0.6).circle(x, y, 11).fillAndStroke('#fff', '#000')
  ink(doc, 'bold', 12)
  line(doc, String(piece), x - doc.widthOfString(String(piece)) / 2, y - 7)
  centred(print, faces.front, x, y + half + 2)
  centred(print, faces.back, x, y - half - 14)
  centred(print, faces.left, x - half - 9, y - 6)
  centred(print, faces.right, x + half + 9, y - 6)
}

function centred({ doc }: Print, text: string, x: number, y: number): void {
  ink(doc, 'plain', BENCH_PT)
  line(doc, text, x - doc.widthOfString(text) / 2, y)
}

function lettering(print: Print, legs: StandingLeg[]): void {
  if (legs.every(({ heart }) => !heart)) return
  paragraph(
    print,
    'Letters to strike on each blank while it lies in its board, face up; near is the edge drawn above:',
  )
  table(
    print,
    [
      { head: 'Piece', share: 10, face: 'bold' },
      { head: 'Stands', share: 22 },
      { head: 'Board’s face', share: 18, face: 'bold' },
      { head: 'Near edge', share: 18, face: 'bold' },
      { head: 'Foot at', share: 18 },
      { head: 'Rings to the front', share: 20, align: 'right' },
    ],
    legs.map((leg) => ({
      cells: [
        String(leg.piece),
        standText(leg),
        leg.lettered.face,
        leg.lettered['near edge'],
        leg.reversed ? 'far end' : 'butt end',
        frontRings(leg),
      ],
    })),
  )
}
