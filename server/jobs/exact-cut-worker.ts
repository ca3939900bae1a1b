import { parentPort } from 'node:worker_threads'
import type { CutNews } from './cut-threads.ts'
import { type CutTask, searchCut } from './exact-cut.ts'
import { threadAnswer } from './thread.ts'

const say = (news: CutNews): void => parentPort?.postMessage(news)

parentPort?.on('message', async (task: CutTask) => {
  const search = async () =>
    JSON.stringify(await searchCut(task, (plan) => say({ plan: JSON.stringify(plan) })))
  try {
    say({ answer: await threadAnswer(search) })
  } catch (error) {
    say({ failed: error })
  }
})
