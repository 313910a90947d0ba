import { flushCompileCache } from 'node:module'
import { isMainThread, Worker } from 'node:worker_threads'

/** What a process aside sends back: pieces of a long answer as they are made, then the answer or what went wrong. */
export type AsideMessage = { piece: unknown } | { answer: unknown } | { failure: { message: string; stack: string } }

/** How a process aside is told its limits: `Aside` in its environment, so that nothing else takes itself for one. */
export const ASIDE_ENV = 'ALMANAC_ASIDE'

const MB = 1024 * 1024
/** Code, buffers and the collector's slack stand beside the heap. */
const BESIDE_HEAP_MB = 400

/**
 * Ends the process when it takes too much memory or time, or when whoever asked is gone. In a thread of its own: the work itself may hold the first thread
 * for good. Its text is the thread's whole program.
 */
function watch(): void {
  const { workerData } = process.getBuiltinModule('node:worker_threads')
  setInterval(() => {
    const isOver = process.memoryUsage.rss() > workerData.mostBytes || performance.now() > workerData.mostMs
    if (isOver || process.ppid !== workerData.parent) process.kill(process.pid, 'SIGKILL')
  }, 50)
}

function isPieces(answer: unknown): answer is AsyncGenerator<unknown, unknown> {
  return typeof answer === 'object' && answer !== null && Symbol.asyncIterator in answer
}

const send = (message: AsideMessage) =>
  new Promise<void>((resolve, reject) => process.send?.(message, undefined, {}, (error) => (error ? reject(error) : resolve())))

async function answer<I>(work: (input: I) => unknown, input: I): Promise<void> {
  try {
    const found = work(input)
    if (!isPieces(found)) return await send({ answer: await found })
    for (;;) {
      const { done, value } = await found.next()
      if (done) return await send({ answer: value })
      await send({ piece: value })
    }
  } catch (error) {
    const { message, stack } = error instanceof Error ? error : new Error(String(error))
    await send({ failure: { message, stack: stack ?? message } })
  }
}

/**
 * Makes a module the program of a process aside: `runInWorkerThread` starts it, hands over its input, and takes what `work` returns. An async generator's yields are
 * handed over piece by piece, so that a long answer holds up neither process. Imported by anything else it does nothing.
 */
export function answerAside<I>(work: (input: I) => unknown): void {
  const limits = process.env[ASIDE_ENV]
  if (!limits || !isMainThread) return
  const { seconds, memoryMb } = JSON.parse(limits) as { seconds: number; memoryMb: number }
  const workerData = { parent: process.ppid, mostBytes: (memoryMb + BESIDE_HEAP_MB) * MB, mostMs: (seconds + 1) * 1000 }
  new Worker(`(${watch.toString()})()`, { eval: true, workerData }).unref()
  flushCompileCache() // for the next of its kind: this one is killed once it has answered
  process.once('message', (input) => void answer(work, input as I).finally(() => process.disconnect()))
}
