import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { EQUIVALENT } from './constants/equivalent.ts'
import { type Constant, changedSource, changedValue, findConstants } from './constants/find-constants.ts'
import { dependents } from './constants/import-graph.ts'
import type { Answer, Task } from './constants/mutant-process.ts'
import { runMutants } from './constants/run-mutants.ts'

type Bench = { args: string[]; say: (line: string) => void }

const root = path.resolve(import.meta.dirname, '../..')
const usage = 'npm run bench -- constants [--file PART] [--kind declared|inline] [--sample N --seed S] [--jobs N]'

function option(args: string[], name: string): string | undefined {
  const at = args.findIndex((arg) => arg === `--${name}` || arg.startsWith(`--${name}=`))
  const found = args[at]
  return at < 0 ? undefined : found?.includes('=') ? found.slice(name.length + 3) : args[at + 1]
}

function wholeOption(args: string[], name: string, usual: number): number {
  const text = option(args, name)
  if (text === undefined) return usual
  const value = Number(text)
  if (!Number.isInteger(value) || value < 1) throw new Error(`--${name} must be a whole number from 1 up. Usage: ${usage}`)
  return value
}

/** The folders under test and their tests, copied: what is being edited meanwhile changes nothing, and nothing is changed in the tree. */
function copyTree(): string {
  const copy = fs.realpathSync(fs.mkdtempSync(path.join(os.tmpdir(), 'constants-')))
  for (const folder of ['packages/softener', 'packages/units', 'tests/reference', 'tests/support']) {
    const skip = (from: string) => !from.includes('node_modules')
    fs.cpSync(path.join(root, folder), path.join(copy, folder), { recursive: true, filter: skip })
  }
  fs.copyFileSync(path.join(root, 'package.json'), path.join(copy, 'package.json'))
  fs.symlinkSync(path.join(root, 'node_modules'), path.join(copy, 'node_modules'))
  return copy
}

const globbed = (copy: string, pattern: string) => fs.globSync(pattern, { cwd: copy }).map((file) => path.join(copy, file))

/** A sample that is the same for the same seed: constants in the order of a mixed index (SplitMix32). */
function sampled(all: Constant[], size: number | undefined, seed: number): Constant[] {
  if (size === undefined || size >= all.length) return all
  const rank = (index: number) => {
    let z = (Math.imul(index + 1, 0x9e3779b9) + seed) | 0
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b)
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35)
    return (z ^ (z >>> 16)) >>> 0
  }
  const mixed = all.map((one, index) => ({ one, key: rank(index) })).sort((a, b) => a.key - b.key)
  return mixed.slice(0, size).map(({ one }) => one)
}

const equivalent = (one: Constant) =>
  EQUIVALENT.find((known) => known.file === one.file && known.code === one.code && known.value === one.value)

type Clean = { tests: string[]; passed: number; ms: Answer['ms']; red: string[] }

/** Runs every test file unchanged: how long each takes, and which are red already. Those are left out, since they would notice everything. */
async function baseline(copy: string, files: string[]): Promise<Clean> {
  const clean: Clean = { tests: [], passed: 0, ms: {}, red: [] }
  const tasks = files.map((file, id) => ({ id, file: '', source: '', again: [], tests: [file] }))
  await runMutants(copy, tasks, 1, (answer) => {
    const file = files[answer.id] as string
    if (answer.killedBy !== null) clean.red.push(`${path.relative(copy, file)}: ${answer.why}`)
    else clean.tests.push(file)
    clean.passed += answer.passed
    Object.assign(clean.ms, answer.ms)
  })
  return clean
}

/**
 * Changes each number of `packages/softener` and `packages/units` by 7 %, one at a time, runs the tests that reach it and counts how many
 * changes turn one red. Prints the score and every survivor with file and line. Works on a copy.
 */
export default async function constants({ args, say }: Bench) {
  const [size, seed, jobs] = [option(args, 'sample'), wholeOption(args, 'seed', 1), wholeOption(args, 'jobs', 2)]
  const [part, kind] = [option(args, 'file') ?? '', option(args, 'kind')]
  const began = performance.now()
  const copy = copyTree()
  try {
    const sources = globbed(copy, 'packages/{softener,units}/**/*.ts').filter((file) => !file.endsWith('.test.ts'))
    const files = [
      ...globbed(copy, 'tests/reference/{softener,units}-*.test.ts'),
      ...globbed(copy, 'packages/{softener,units}/**/*.test.ts'),
    ]
    const reach = dependents(copy, [...sources, ...globbed(copy, 'tests/{reference,support}/**/*.ts'), ...files])
    const texts = new Map(sources.map((file) => [file, fs.readFileSync(file, 'utf8')]))
    const all = sources
      .flatMap((file) => findConstants(path.relative(copy, file), texts.get(file) ?? ''))
      .filter((one) => one.file.includes(part) && (kind === undefined || one.kind === kind))
    const chosen = sampled(all, size === undefined ? undefined : wholeOption(args, 'sample', 1), seed)
    const clean = await baseline(copy, files)
    say(
      `${all.length} constants in ${sources.length} files, ${chosen.length} of them changed one by one; ${clean.passed} tests are green unchanged.`,
    )
    for (const words of clean.red) say(`red before anything was changed, left out: ${words}`)
    const tasks: Task[] = chosen.map((one, index) => {
      const file = path.join(copy, one.file)
      const again = reach.get(file) ?? new Set()
      const related = clean.tests.filter((test) => again.has(test)).sort((a, b) => (clean.ms[a] ?? 0) - (clean.ms[b] ?? 0))
      return { id: index + 1, file, source: changedSource(texts.get(file) ?? '', one), again: [...again], tests: related }
    })
    const survivors: Constant[] = []
    let done = 0
    await runMutants(copy, tasks, jobs, (answer) => {
      const one = chosen[answer.id - 1]
      if (one && answer.killedBy === null) survivors.push(one)
      done += 1
      if (done % 100 === 0) say(`${done} of ${tasks.length} done, ${survivors.length} survived`)
    })
    return { ...report(say, chosen, survivors, (performance.now() - began) / 1000), redTests: clean.red.length }
  } finally {
    fs.rmSync(copy, { recursive: true, force: true })
  }
}

function report(say: (line: string) => void, chosen: Constant[], survivors: Constant[], seconds: number) {
  const honest = survivors.filter((one) => !equivalent(one))
  honest.sort((a, b) => (a.file === b.file ? a.line - b.line : a.file < b.file ? -1 : 1))
  for (const one of honest)
    say(`survived  ${one.file}:${one.line}  ${one.value} → ${changedValue(one)}  ${one.kind}  ${one.code.slice(0, 110)}`)
  const same = survivors.length - honest.length
  const score = (kind: Constant['kind']) => {
    const of = chosen.filter((one) => one.kind === kind && !(survivors.includes(one) && equivalent(one)))
    const lived = honest.filter((one) => one.kind === kind).length
    return { killed: of.length - lived, total: of.length }
  }
  const [declared, inline] = [score('declared'), score('inline')]
  say(`declared constants and tables: ${declared.killed} of ${declared.total} turn a test red`)
  say(`numbers inside formulas: ${inline.killed} of ${inline.total} turn a test red`)
  say(`${same} changes that nobody could notice are left out, each with its reason in scripts/bench/constants/equivalent.ts`)
  return { declared, inline, equivalent: same, seconds: Math.round(seconds) }
}
