// Stands in for the test runner inside a mutant's process: the tests' own `expect` is the real one, the rest only collects and runs.
import { expect as realExpect } from 'vitest'

type Work = () => unknown
type Scope = { beforeAll: Work[]; afterAll: Work[]; beforeEach: Work[]; afterEach: Work[]; parts: (Scope | Work)[] }

const newScope = (): Scope => ({ beforeAll: [], afterAll: [], beforeEach: [], afterEach: [], parts: [] })
let top = newScope()
let scope = top

const workOf = (args: unknown[]) => args.find((arg) => typeof arg === 'function') as ((...values: unknown[]) => unknown) | undefined
const spread = (row: unknown) => (Array.isArray(row) ? row : [row])

/** A test or a suite with the variants that the tests use. */
function declaring(add: (work: (...values: unknown[]) => unknown, values: unknown[]) => void) {
  const declare = (_name: string, ...args: unknown[]) => {
    const work = workOf(args)
    if (work) add(work, [])
  }
  const each =
    (rows: readonly unknown[]) =>
    (_name: string, ...args: unknown[]) => {
      const work = workOf(args)
      if (work) for (const row of rows) add(work, spread(row))
    }
  const skip = () => undefined
  return Object.assign(declare, { each, for: each, skip, todo: skip, only: declare, concurrent: declare })
}

export const expect = realExpect
export const it = declaring((work, values) => scope.parts.push(() => work(...values)))
export const test = it
export const describe = declaring((work, values) => {
  const outer = scope
  const inner = newScope()
  outer.parts.push(inner)
  scope = inner
  work(...values)
  scope = outer
})
export const suite = describe
export const beforeAll = (work: Work) => scope.beforeAll.push(work)
export const afterAll = (work: Work) => scope.afterAll.push(work)
export const beforeEach = (work: Work) => scope.beforeEach.push(work)
export const afterEach = (work: Work) => scope.afterEach.push(work)

async function run(one: Scope, around: Scope[]): Promise<number> {
  let count = 0
  const chain = [...around, one]
  for (const work of one.beforeAll) await work()
  for (const part of one.parts) {
    if (typeof part !== 'function') {
      count += await run(part, chain)
      continue
    }
    for (const work of chain.flatMap((outer) => outer.beforeEach)) await work()
    await part()
    for (const work of chain.flatMap((outer) => outer.afterEach)) await work()
    count += 1
  }
  for (const work of one.afterAll) await work()
  return count
}

/** Runs what the file just imported declared, stopping at the first failure, which is thrown. Answers how many tests passed. */
export async function runCollected(): Promise<number> {
  const collected = top
  top = newScope()
  scope = top
  return run(collected, [])
}

/** Forgets what was declared by an import that failed half-way. */
export function forgetCollected(): void {
  top = newScope()
  scope = top
}
