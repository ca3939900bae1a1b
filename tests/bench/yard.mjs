// How long the yard orders take with the whole-number solver, wall and CPU: share proven, median, 95th percentile.
import { readFileSync } from 'node:fs'

const core = (file) => import(new URL(`../../dist/${file}`, import.meta.url).href)
const { readCutOrder } = await core('shared/cutting/order.js')
const { solveCut } = await core('shared/cutting/solve.js')
const { highsSolver } = await core('server/jobs/highs.js')

const here = (file) => JSON.parse(readFileSync(new URL(file, import.meta.url), 'utf8'))

/** Random yards: widths 4–12 in by 1/8, lengths 6–12 ft by 1/2 in, two of five boards with a defect or two. */
function randomYard(seed, { sizes, sides, pieces, boards }) {
  let state = seed * 7919 + 17
  const chance = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    const mixed = Math.imul(state ^ (state >>> 16), 0x45d9f3b)
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32
  }
  const whole = (least, most) => least + Math.floor(chance() * (most - least + 1))
  const side = Array.from({ length: sides }, () => whole(10, 24) / 8)
  const blanks = Array.from({ length: sizes }, (_, i) => ({
    key: `b${i}`,
    side: side[i % sides],
    length: whole(48, 320) / 8,
    count: Math.max(1, Math.round((pieces / sizes) * (0.4 + 1.2 * chance()))),
  }))
  const offered = Array.from({ length: boards }, (_, i) => {
    const [width, length] = [whole(32, 96) / 8, whole(144, 288) / 2]
    const defects = Array.from({ length: chance() < 0.4 ? whole(1, 2) : 0 }, () => {
      const long = whole(4, 16) / 2
      const from = whole(0, Math.floor((length - long) * 2)) / 2
      return { from, to: from + long }
    })
    const price = Math.round((width * Math.floor(length / 12)) / 12)
    return { key: `B${i}`, width, length, thickness: 3.25, count: 1, price, defects }
  })
  const mm = (one, ...lengths) => ({ ...one, ...Object.fromEntries(lengths.map((l) => [l, one[l] * 25.4])) })
  return {
    units: 'mm',
    kerf: 3.175,
    endTrim: 25.4,
    edgeTrim: 0,
    blanks: blanks.map((blank) => mm(blank, 'side', 'length')),
    boards: offered.map((board) => ({
      ...mm(board, 'width', 'length', 'thickness'),
      defects: board.defects.map((defect) => mm(defect, 'from', 'to')),
    })),
  }
}

async function timed(name, orders, seconds) {
  const [wall, cpu] = [[], []]
  let [proven, boards] = [0, 0]
  for (const order of orders) {
    const [began, used] = [performance.now(), process.cpuUsage()]
    const now = () => performance.now()
    const plan = await solveCut(order, { now, deadline: now() + seconds * 1000, mip: highsSolver })
    const { user, system } = process.cpuUsage(used)
    wall.push((performance.now() - began) / 1000)
    cpu.push((user + system) / 1e6)
    if (plan.proven) proven++
    boards += plan.boards.length
  }
  const at = (all, share) => [...all].sort((a, b) => a - b)[Math.ceil(all.length * share) - 1].toFixed(2)
  const figures = (all) => `median ${at(all, 0.5)} p95 ${at(all, 0.95)} max ${at(all, 1)} s`
  console.log(
    `${name.padEnd(34)} proven ${proven}/${orders.length}   wall ${figures(wall)}   CPU ${figures(cpu)}   ${boards} boards`,
  )
}

/** The forty yard orders, and harder ones of the same make. */
export async function timeYards() {
  await highsSolver()
  const { instances } = here('../reference/cutting/yard.json')
  await timed(
    'forty yard orders',
    instances.map(({ order }) => readCutOrder(order)),
    10,
  )
  const make = (count, seed, how) =>
    Array.from({ length: count }, (_, i) => readCutOrder(randomYard(seed + i, how(i))))
  const usual = (i) => ({ sizes: 1 + (i % 5), sides: 1 + (i % 3), pieces: 10 + 4 * i, boards: 20 + 3 * i })
  await timed('24 random yards', make(24, 100, usual), 10)
  const hard = () => ({ sizes: 5, sides: 3, pieces: 400, boards: 300 })
  await timed('400 blanks from 300 boards', make(3, 300, hard), 20)
}
