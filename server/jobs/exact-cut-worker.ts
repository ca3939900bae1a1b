import { parentPort, workerData } from 'node:worker_threads'
import { type CutTask, searchCut } from './exact-cut.ts'
import { threadAnswer } from './thread.ts'

parentPort?.postMessage(await threadAnswer(() => searchCut(workerData as CutTask)))
