import { parentPort } from 'node:worker_threads'
import type { CutNews } from './cut-threads.ts'
import { type CutTask, searchCut } from './exact-cut.ts'
import { threadAnswer } from './thread.ts'

const say = (news: CutNews): void => parentPort?.postMessage(news)

async function search(task: CutTask): Promise<void> {
  const found = async () =>
    JSON.stringify(await searchCut(task, (plan) => say({ plan: JSON.stringify(plan) })))
  try {
    say({ answer: await threadAnswer(found) })
  } catch (error) {
    say({ failed: error })
  }
}

parentPort?.on('message', (task: CutTask) => void search(task))
