import { Worker } from 'node:worker_threads'

/**
 * Calls an exported function of a module in a thread of its own and answers what it returned, so that long arithmetic holds up nothing else in this process.
 * Input and answer are copied: plain data only. The thread ends with the call; an error in it is this call's error.
 */
export function runAside<O>(module: string, name: string, input: unknown): Promise<O> {
  return new Promise<O>((resolve, reject) => {
    const thread = new Worker(new URL('./aside-thread.ts', import.meta.url), { workerData: { module, name, input } })
    // Node's watch mode sends messages of its own through the same door.
    thread.on('message', (message: { answer?: O }) => {
      if (message && typeof message === 'object' && 'answer' in message) resolve(message.answer as O)
    })
    thread.once('error', reject)
    thread.once('exit', (code) => reject(new Error(`The calculation ${name} ended without an answer (${code}).`)))
  })
}
