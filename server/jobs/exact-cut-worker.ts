import { parentPort, workerData } from 'node:worker_threads'
import { type CutTask, searchCut } from './exact-cut.ts'

parentPort?.postMessage(await searchCut(workerData as CutTask))
