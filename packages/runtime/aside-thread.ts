import { parentPort, workerData } from 'node:worker_threads'

const { module, name, input } = workerData as { module: string; name: string; input: unknown }
const loaded = (await import(module)) as Record<string, (input: unknown) => unknown>
const work = loaded[name]
if (!work) throw new Error(`${module} has nothing called ${name}.`)
parentPort?.postMessage({ answer: await work(input) })
