// Prints how long the main work takes on this machine: median and 95th percentile of many runs, after a
// warm-up. Figures, not limits: nothing fails here.
import { readFileSync } from 'node:fs'
import { cpus } from 'node:os'
import { timeCutInBrowser } from './cut-in-browser.mjs'
import { timeDragging } from './dragging.mjs'
import { timeOneDimension } from './one-dimension.mjs'
import { sixtyStations } from './sixty-stations.mjs'
import { timeYards } from './yard.mjs'

const core = (file) => import(new URL(`../../dist/shared/${file}`, import.meta.url).href)
const { planJob } = await core('plan.js')
const { readJob } = await core('job.js')
const { defaultShop } = await core('shop.js')
const { readCutOrder } = await core('cutting/order.js')
const { quickCut } = await core('cutting/quick.js')
const { shopRecord } = await core('estimate/record.js')
const { operationKinds } = await core('route/kinds.js')
const { matchSet } = await core('matching/match.js')
const { readSetFile } = await core('matching/set-file.js')
const woods = JSON.parse(readFileSync(new URL('../../seed/species.json', import.meta.url), 'utf8'))
const yard = JSON.parse(readFileSync(new URL('../reference/cutting/yard.json', import.meta.url), 'utf8'))

const job = readJob({
  name: 'Long run',
  units: 'mm',
  species: 'oak-white',
  quantity: 400,
  profile: { stations: sixtyStations() },
})
const small = readJob({
  name: 'Dowels',
  units: 'mm',
  species: 'maple-sugar',
  quantity: 4,
  profile: {
    stations: [
      { at: 0, diameter: 30 },
      { at: 400, diameter: 30 },
    ],
  },
})
const orders = yard.instances.map((i) => readCutOrder(i.order))
const noise = (i) => Math.sin(i * 12.9898) * 43758.5453 - Math.floor(Math.sin(i * 12.9898) * 43758.5453) - 0.5
const set = readSetFile({
  units: 'mm',
  choose: 36,
  stations: Array.from({ length: 8 }, (_, s) => ({ key: `s${s}`, target: 30 + s, plus: 0.8, minus: 0.8 })),
  pieces: Array.from({ length: 40 }, (_, p) => ({
    key: `p${p}`,
    readings: Object.fromEntries(
      Array.from({ length: 8 }, (_, s) => [`s${s}`, 30 + s + noise(p * 8 + s + 1)]),
    ),
  })),
})

function time(name, run, { runs = 60, warm = 10 } = {}) {
  for (let i = 0; i < warm; i++) run(i)
  const ms = Array.from({ length: runs }, (_, i) => {
    const start = performance.now()
    run(i)
    return performance.now() - start
  }).sort((a, b) => a - b)
  const at = (share) => ms[Math.min(runs - 1, Math.floor(runs * share))].toFixed(2).padStart(9)
  console.log(`${name.padEnd(58)} median ${at(0.5)} ms   p95 ${at(0.95)} ms`)
}

console.log(`Node ${process.version}, ${cpus().length} cores\n`)
time(`plan ${job.profile.stations.length} stations, ${job.quantity} pieces (quick cut)`, () =>
  planJob(job, defaultShop, woods),
)
time('plan 2 stations, 4 pieces', () => planJob(small, defaultShop, woods))
time(`quick cut of a yard order (${orders.length} in turn)`, (i) => quickCut(orders[i % orders.length]), {
  runs: 120,
})
time('match 40 pieces at 8 stations, choose 36', () => matchSet(set), { runs: 20, warm: 3 })
const kinds = Object.keys(operationKinds)
const timed = Array.from({ length: 50 }, (_, batch) => ({
  job: `j${batch}`,
  steps: Array.from({ length: 25 * 10 }, (_, i) => ({
    operation: `o${i % 25}`,
    kind: kinds[i % 25],
    usual: 3,
    minutes: 3 * Math.exp(0.4 * noise(batch * 250 + i + 1)),
    at: `${batch} ${i}`,
  })),
}))
time('the shop’s record: 50 batches, 25 kinds, 10 pieces', () => shopRecord(timed, defaultShop), {
  runs: 20,
  warm: 3,
})
await timeDragging(sixtyStations())
await timeCutInBrowser(orders)
await timeYards()
await timeOneDimension()
