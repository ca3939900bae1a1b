// Everything that `npm test` runs once set-up is done, in the order in which it is quickest to learn of a fault.
import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const reports = mkdtempSync(join(tmpdir(), 'setwright-tests-'))
const bin = (name) => join(root, 'node_modules', ...name.split('/'))

/** Runs a program of the packages with this Node; answers whether it ended well. */
function run(what, script, args, env = {}) {
  return new Promise((resolve) => {
    const begun = Date.now()
    process.stdout.write(`\n== ${what}\n`)
    const child = spawn(process.execPath, [bin(script), ...args], {
      cwd: root,
      env: { ...process.env, ...env },
      stdio: ['ignore', 'inherit', 'inherit'],
    })
    child.on('error', () => resolve(false))
    child.on('close', (code) => {
      const seconds = ((Date.now() - begun) / 1000).toFixed(1)
      process.stdout.write(`== ${what}: ${code === 0 ? 'good' : 'FAILED'} (${seconds} s)\n`)
      resolve(code === 0)
    })
  })
}

const checks = [
  ...['tsconfig.json', 'shared', 'web'].map((project) => [
    `types of ${project}`,
    'typescript/bin/tsc',
    ['-p', project],
  ]),
  ['types of server', 'typescript/bin/tsc', ['-p', 'server', '--noEmit']],
  ['format and lint', '@biomejs/biome/bin/biome', ['check', '--error-on-warnings', '.']],
  ['promises and types in use', 'oxlint/bin/oxlint', ['--type-aware', '--deny-warnings']],
  ['dead code', 'knip/bin/knip.js', []],
]

const suites = [
  { name: 'unit, reference and interface tests', args: [] },
  {
    name: 'browser tests',
    args: ['--config', 'tests/browser/vitest.config.ts'],
    needs: 'tests/browser/vitest.config.ts',
  },
]

/** Tests of a run by its report; a run that left none counts as one failure. */
function counted(file, isGood) {
  if (!existsSync(file)) return { passed: 0, failed: 1, skipped: 0 }
  const report = JSON.parse(readFileSync(file, 'utf8'))
  const { numPassedTests: passed, numFailedTests, numPendingTests, numTodoTests } = report
  const broken = report.testResults.filter(
    (each) => each.status === 'failed' && each.assertionResults.length === 0,
  )
  const failed = numFailedTests + broken.length
  return { passed, failed: !isGood && failed === 0 ? 1 : failed, skipped: numPendingTests + numTodoTests }
}

async function runSuite({ name, args, needs }, i) {
  if (needs && !existsSync(join(root, needs))) return { passed: 0, failed: 0, skipped: 0 }
  const file = join(reports, `${i}.json`)
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`]
  const isGood = await run(name, 'vitest/vitest.mjs', ['run', ...args, ...reporters], {
    CI: process.env.CI ?? '1',
  })
  return counted(file, isGood)
}

const failedChecks = []
for (const [what, script, args] of checks) if (!(await run(what, script, args))) failedChecks.push(what)

const total = { passed: checks.length - failedChecks.length, failed: failedChecks.length, skipped: 0 }
for (const [i, suite] of suites.entries()) {
  const { passed, failed, skipped } = await runSuite(suite, i)
  total.passed += passed
  total.failed += failed
  total.skipped += skipped
}
rmSync(reports, { recursive: true, force: true })

for (const what of failedChecks) process.stdout.write(`\n${what} FAILED; its words are above.\n`)
process.stdout.write(
  `\n${total.passed} passed, ${total.failed} failed${total.skipped > 0 ? `, ${total.skipped} skipped` : ''}\n`,
)
if (total.failed > 0) process.exitCode = 1
