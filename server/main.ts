import { startServer } from './serve.ts'

await startServer(process.env)
