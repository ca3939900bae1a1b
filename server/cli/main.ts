import { runCli } from './dispatch.ts'

await runCli(process.argv.slice(2), process.cwd())
