// One process of the constants bench: it takes mutants one after another, imports the tests anew over the changed module, and answers whether
// one of them failed. Only modules that reach the changed one are imported again. Nothing is written.
import fs from 'node:fs'
import { registerHooks, stripTypeScriptTypes } from 'node:module'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { fileOf } from './import-graph.ts'
import { forgetCollected, runCollected } from './test-shim.ts'

export type Task = { id: number; file: string; source: string; again: string[]; tests: string[] }
export type Answer = { id: number; killedBy: string | null; why: string; passed: number; ms: Record<string, number> }

const copy = process.argv[2] as string
const SHIM = new URL('./test-shim.ts', import.meta.url).href
let task: Task = { id: 0, file: '', source: '', again: [], tests: [] }
let again = new Set<string>()
const plain = new Map<string, string>()

registerHooks({
  resolve(specifier, context, next) {
    const parent = context.parentURL?.startsWith('file:') ? fileURLToPath(context.parentURL) : ''
    if (!parent.startsWith(copy)) return next(specifier, context)
    if (specifier === 'vitest') return { url: SHIM, shortCircuit: true }
    const file = fileOf(copy, parent, specifier)
    if (file === null) return next(specifier, context)
    const url = pathToFileURL(file)
    if (again.has(file)) url.search = `m=${task.id}`
    return { url: url.href, shortCircuit: true }
  },
  load(url, context, next) {
    const file = url.startsWith('file:') ? fileURLToPath(url) : ''
    if (!file.startsWith(copy) || !file.endsWith('.ts')) return next(url, context)
    if (file === task.file && again.has(file)) return { format: 'module', source: stripTypeScriptTypes(task.source), shortCircuit: true }
    const source = plain.get(file) ?? stripTypeScriptTypes(fs.readFileSync(file, 'utf8'))
    plain.set(file, source)
    return { format: 'module', source, shortCircuit: true }
  },
})

async function run(): Promise<Answer> {
  const ms: Answer['ms'] = {}
  let passed = 0
  for (const test of task.tests) {
    const began = performance.now()
    try {
      await import(`${pathToFileURL(test).href}?m=${task.id}`)
      passed += await runCollected()
    } catch (error) {
      forgetCollected()
      const why = (error instanceof Error ? error.message : String(error)).split('\n')[0] ?? ''
      return { id: task.id, killedBy: test, why, passed, ms }
    }
    ms[test] = performance.now() - began
  }
  return { id: task.id, killedBy: null, why: '', passed, ms }
}

console.log = () => undefined
process.on('message', async (next: Task) => {
  task = next
  again = new Set(next.again)
  process.send?.(await run())
})
process.send?.('ready')
