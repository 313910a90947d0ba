import { readOption } from './load/options.ts'

type Bench = {
  args: string[]
  say: (line: string) => void
  openDatabase: () => Promise<{ superUrl: string }>
  later: (close: () => Promise<unknown>) => void
}

/**
 * `--runs=500 --seed=1`: that many seeded runs of a tablet whose requests and answers are lost, doubled and reordered, that is ended in between, while a dispatcher calls
 * visits off; each against the model that is written from docs/field-protocol.md. Says what differed.
 */
export default async function fieldFaults({ args, say, openDatabase, later }: Bench) {
  const runs = readOption(args, 'runs', 500, 1, 100_000)
  const seed = readOption(args, 'seed', 20_261_130, 1, 2_000_000_000)
  const { superUrl } = await openDatabase()
  const { generateClient } = await import('../support/build.mjs')
  await generateClient()
  const { runFieldFaults } = await import('./faults/field-runs.ts')
  return runFieldFaults({ runs, seed, superUrl, later }, say)
}
