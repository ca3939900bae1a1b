import { parentPort, workerData } from 'node:worker_threads'
import { type PlanTask, workOutPlan } from './long-plan.ts'
import { threadAnswer } from './thread.ts'

parentPort?.postMessage(await threadAnswer(() => workOutPlan(workerData as PlanTask)))
