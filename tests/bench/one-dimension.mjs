// Boards without number, no kerf, one side: strips cut into lengths drawn by published recipes. Prints what share
// is proven to be least within 1 s and 10 s of processor time, and how long it takes.
const core = (file) => import(new URL(`../../dist/shared/${file}`, import.meta.url).href)

/** Numbers from 0 to below 1, alike for the same seed: mulberry32 (from memory). */
function chances(seed) {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

/** Falkenauer 1996: boards of 1000, each filled by three lengths exactly. */
function triplets(boards, whole) {
  return Array.from({ length: boards }, () => {
    const first = whole(380, 490)
    const second = whole(250, Math.ceil((1000 - first) / 2) - 1)
    return [first, second, 1000 - first - second]
  }).flat()
}

/** The recipes, from memory of the papers; each gives lists of [board length, lengths]. */
function recipes(whole) {
  const many = (n, make) => Array.from({ length: n }, make)
  const uniform = (n, least, most) => many(n, () => whole(least, most))
  const each = (lists, make) => lists.flatMap(make)
  const sizes = [50, 100, 200, 500]
  return {
    'Falkenauer U': each([120, 250, 500, 1000], (n) => many(20, () => [150, uniform(n, 20, 100)])),
    'Falkenauer T': each([60, 120, 249, 501], (n) => many(20, () => [1000, triplets(n / 3, whole)])),
    // Scholl, Klein & Jürgens 1997.
    'Scholl 1': each(sizes, (n) =>
      each([100, 120, 150], (board) =>
        each([1, 20, 30], (least) => many(20, () => [board, uniform(n, least, 100)])),
      ),
    ),
    'Scholl 2': each(sizes, (n) =>
      each([3, 5, 7, 9], (part) =>
        each([0.2, 0.5, 0.9], (spread) => {
          const mean = 1000 / part
          const [least, most] = [Math.ceil(mean * (1 - spread)), Math.floor(mean * (1 + spread))]
          return many(10, () => [1000, uniform(n, least, most)])
        }),
      ),
    ),
    'Scholl 3': many(10, () => [100_000, uniform(200, 20_000, 35_000)]),
    'Schwerin & Wäscher': each([100, 120], (n) => many(100, () => [1000, uniform(n, 150, 200)])),
    // Wäscher & Gau 1996: few long ones and many short.
    'Wäscher & Gau': many(17, () => {
      const long = whole(8, 40)
      return [10_000, [...uniform(long, 2500, 8000), ...uniform(whole(50, 190), 1, 1000)]]
    }),
    'Uniform 1 to 800': each([160, 180, 200], (n) => many(10, () => [1000, uniform(n, 1, 800)])),
  }
}

function orderOf([board, lengths]) {
  const counts = new Map()
  for (const length of lengths) counts.set(length, (counts.get(length) ?? 0) + 1)
  return {
    units: 'mm',
    kerf: 0,
    endTrim: 0,
    edgeTrim: 0,
    blanks: [...counts].map(([length, count], i) => ({ key: `b${i}`, side: 20, length, count })),
    boards: [{ key: 'B', width: 20, length: board, thickness: 20, count: null, price: 1 }],
  }
}

/** ms of processor time this program has used. */
const used = () => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

/** Prints one line for each recipe. */
export async function timeOneDimension(seconds = 10) {
  const { solveCut } = await core('cutting/solve.js')
  const { cutBreaches } = await core('cutting/check.js')
  const { readCutOrder } = await core('cutting/order.js')
  const chance = chances(1)
  const whole = (least, most) => least + Math.floor(chance() * (most - least + 1))
  for (const [name, lists] of Object.entries(recipes(whole))) {
    const times = []
    let [within1, within10] = [0, 0]
    for (const list of lists) {
      const order = readCutOrder(orderOf(list))
      const began = used()
      const plan = await solveCut(order, { now: used, deadline: began + 1000 * seconds })
      const ms = used() - began
      if (cutBreaches(order, plan).length > 0) throw new Error(`${name}: ${cutBreaches(order, plan)[0]}`)
      times.push(ms)
      if (plan.proven && ms <= 1000) within1++
      if (plan.proven && ms <= 10_000) within10++
    }
    times.sort((a, b) => a - b)
    const at = (share) =>
      times[Math.min(times.length - 1, Math.floor(times.length * share))].toFixed(1).padStart(8)
    const share = (n) => `${((100 * n) / times.length).toFixed(1).padStart(5)} %`
    console.log(
      `${name.padEnd(20)} ${String(times.length).padStart(4)} orders   proven in 1 s ${share(within1)}, 10 s ${share(within10)}` +
        `   median ${at(0.5)} ms   p95 ${at(0.95)} ms   most ${at(1)} ms`,
    )
  }
}

if (process.argv[1]?.endsWith('one-dimension.mjs')) await timeOneDimension()
