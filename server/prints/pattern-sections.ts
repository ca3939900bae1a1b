import type { Joint } from '../../shared/job.ts'
import { faces, jointCorners, placeAt, reachAt } from '../../shared/profile/faces.ts'
import { jointAngle } from '../../shared/profile/joint-reach.ts'
import { type JointSection, jointSections } from '../../shared/profile/joint-sections.ts'
import { sectionAt } from '../../shared/profile/radius.ts'
import type { Section } from '../../shared/profile/section.ts'
import { lengthText } from '../../shared/units/length.ts'
import { cross } from './cross.ts'
import { lookText } from './figures.ts'
import { heading } from './flow.ts'
import type { HandJoints } from './hands.ts'
import type { PatternSource } from './pattern-source.ts'
import { BENCH_PT, ink, line, newPage, type Print, pt } from './print.ts'

/** A place where the part is cut across, with the hand it is of. */
interface View extends JointSection<Joint> {
  hand: string
}

/** Room for the letters of the faces round a section, mm, and for its words below, points. */
const LETTERS = 9
const WORDS_PT = 30
const GAP_PT = 14

const viewsOf = ({ profile }: PatternSource, { words, joints }: HandJoints): View[] =>
  jointSections(profile, joints).map((section) => ({ ...section, hand: words }))

/** Every joint as seen from the top, at true size where the paper is large enough. */
export function sectionViews(print: Print, source: PatternSource): void {
  const views = source.hands.flatMap((hand) => viewsOf(source, hand)).sort((a, b) => a.at - b.at)
  if (views.length === 0) return
  const cells = views.map((view) => {
    const section = sectionAt(source.profile, view.at)
    const scale = scaleFor(print, section)
    return { view, section, scale, cell: cellOf(print, section, scale, wordsOf(source, view, scale)) }
  })
  heading(print, 'Seen from the top, cut across', cells[0]!.cell.height)
  let [x, tallest] = [print.box.left, 0]
  for (const { view, section, scale, cell } of cells) {
    if (x + cell.width > print.box.right && x > print.box.left) {
      print.y += tallest + GAP_PT
      ;[x, tallest] = [print.box.left, 0]
    }
    if (print.y + cell.height > print.box.bottom) {
      newPage(print)
      ;[x, tallest] = [print.box.left, 0]
    }
    drawView(print, source, view, section, { x, scale, ...cell })
    x += cell.width + GAP_PT
    tallest = Math.max(tallest, cell.height)
  }
  print.y += tallest + GAP_PT
}

/** Half the width of a section with a face below, mm. */
const reachOf = (section: Section): number => reachAt(section, 0)

/** True size, else the largest half, quarter… that the sheet takes. */
function scaleFor({ box }: Print, section: Section): number {
  const room = Math.min(box.right - box.left, box.bottom - box.top - WORDS_PT - 30)
  let scale = 1
  while (pt(2 * (reachOf(section) * scale + LETTERS)) > room) scale /= 2
  return scale
}

function wordsOf({ style, profile }: PatternSource, { at, hand, joints }: View, scale: number): string[] {
  const depths = joints.map(
    (joint) => `${joint.kind} ${lookText(joint)} ${lengthText(joint.depth, style)} deep`,
  )
  const glue = profile.split ? ['glue line dashed'] : []
  const size = scale === 1 ? '' : `, drawn 1:${1 / scale}`
  return [`${lengthText(at, style)} from the foot${size}`, ...(hand ? [hand] : []), ...glue, ...depths]
}

interface Cell {
  width: number
  height: number
  words: string[]
}

function cellOf({ doc }: Print, section: Section, scale: number, words: string[]): Cell {
  const drawn = pt(2 * (reachOf(section) * scale + LETTERS))
  ink(doc, 'bold', BENCH_PT)
  const width = Math.max(drawn, ...words.map((text) => doc.widthOfString(text)))
  return { width, height: drawn + words.length * 13, words }
}

/** A section where it is drawn: its middle in points, drawn so many times its size. */
interface Drawn {
  section: Section
  scale: number
  middle: [x: number, y: number]
}

function drawView(
  { doc, y }: Print,
  { profile }: PatternSource,
  { joints }: View,
  section: Section,
  { x, scale, width, words }: Cell & { x: number; scale: number },
): void {
  const reach = reachOf(section) * scale
  const drawn: Drawn = { section, scale, middle: [x + width / 2, y + pt(reach + LETTERS)] }
  cutAcross(doc, joints, drawn)
  if (profile.split) glueLine(doc, drawn)
  cross(doc, ...drawn.middle, 2)
  letters(doc, drawn)
  angles(doc, joints, drawn)
  ink(doc, 'bold', BENCH_PT)
  words.forEach((text, i) => {
    line(doc, text, x, y + pt(2 * (reach + LETTERS)) + i * 13)
  })
}

/** The section with what its joints take out of it. */
function cutAcross(
  doc: PDFKit.PDFDocument,
  joints: Joint[],
  { section, scale, middle: [cx, cy] }: Drawn,
): void {
  const to = ([dx, dy]: [number, number]): [number, number] => [cx + pt(dx * scale), cy + pt(dy * scale)]
  const outline = Array.from({ length: 720 }, (_, i) => to(placeAt(reachAt(section, i / 2), i / 2)))
  doc
    .lineWidth(pt(0.25))
    .polygon(...outline)
    .stroke('#000')
  doc
    .save()
    .polygon(...outline)
    .clip()
  for (const joint of joints) {
    const corners = jointCorners(joint, section).map(to)
    doc
      .lineWidth(pt(0.25))
      .polygon(...corners)
      .fillAndStroke('#ddd', '#000')
  }
  doc.restore()
}

function glueLine(doc: PDFKit.PDFDocument, { section, scale, middle: [cx, cy] }: Drawn): void {
  const arm = pt(reachOf(section) * scale + 2)
  doc.lineWidth(pt(0.35)).dash(pt(6), { space: pt(1.5) })
  doc
    .moveTo(cx - arm, cy)
    .lineTo(cx + arm, cy)
    .stroke('#000')
    .undash()
}

/** The letters of the faces round the section. */
function letters(doc: PDFKit.PDFDocument, { section, scale, middle: [cx, cy] }: Drawn): void {
  ink(doc, 'bold', 14)
  for (const [letter, degrees] of faces) {
    const [dx, dy] = placeAt(pt(reachAt(section, degrees) * scale + 4.5), degrees)
    line(doc, letter, cx + dx - doc.widthOfString(letter) / 2, cy + dy - 8.5)
  }
}

/** The angle of each joint that looks between two faces. */
function angles(doc: PDFKit.PDFDocument, joints: Joint[], { section, scale, middle: [cx, cy] }: Drawn): void {
  ink(doc, 'plain', BENCH_PT)
  for (const joint of joints.filter(({ angle }) => angle !== undefined && angle % 90 !== 0)) {
    const [dx, dy] = placeAt(pt(reachAt(section, jointAngle(joint)) * scale + 5), jointAngle(joint))
    // The letters of the faces round it show which way it is turned.
    const words = `${Math.abs(joint.angle!)}°`
    line(doc, words, cx + dx - doc.widthOfString(words) / 2, cy + dy - 6)
  }
}
