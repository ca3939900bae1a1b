import { Worker } from 'node:worker_threads'
import { type Breach, Problem, type ProblemCode } from '../../shared/problem.ts'

/** What a thread answers: what it worked out, or its refusal, which does not keep its kind on the way. */
export type ThreadAnswer<T> =
  | { done: T }
  | { refused: { code: ProblemCode; message: string; errors: Breach[] } }

/** Works something out for the thread that asked. */
export async function threadAnswer<T>(work: () => T | Promise<T>): Promise<ThreadAnswer<T>> {
  try {
    return { done: await work() }
  } catch (error) {
    if (!(error instanceof Problem)) throw error
    const { code, message, errors } = error
    return { refused: { code, message, errors } }
  }
}

/** @throws Problem that the thread refused with */
export function takeAnswer<T>(answer: ThreadAnswer<T>): T {
  if ('done' in answer) return answer.done
  const { code, message, errors } = answer.refused
  throw new Problem(code, message, errors)
}

/**
 * The file of a worker beside the module at `url`. Built files run in a thread of their own; the sources, as tests
 * load them, in the calling one.
 */
export const workerBeside = (url: string, name: string): URL | undefined =>
  url.endsWith('.js') ? new URL(`./${name}.js`, url) : undefined

/** What a worker makes of its task, in a thread of its own so that the server goes on. */
export function inThread<T>(file: URL, task: unknown): Promise<T> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(file, { workerData: task })
    worker.once('message', (answer: ThreadAnswer<T>) => {
      try {
        resolve(takeAnswer(answer))
      } catch (problem) {
        reject(problem)
      }
    })
    worker.once('error', reject)
    worker.once('exit', (code) => reject(new Error(`The thread ended without an answer (exit ${code}).`)))
  })
}
