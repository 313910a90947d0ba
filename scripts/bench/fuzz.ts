import { readOption } from './load/options.ts'

type Bench = {
  args: string[]
  say: (line: string) => void
  openApp: (how: { demo: boolean }) => Promise<{ baseUrl: string; superUrl: string }>
}

/**
 * `--requests=100000 --seed=1 --clients=8 --megabytes=100 --minutes=600`: seeded requests of every kind against a served app of its own. Prints failures, stacks, the slowest, the web
 * server's memory and how soon others are answered meanwhile.
 */
export default async function fuzz({ args, say, openApp }: Bench) {
  const how = {
    requests: readOption(args, 'requests', 100_000, 1, 1_000_000),
    seed: readOption(args, 'seed', 1, 0, 2 ** 31),
    clients: readOption(args, 'clients', 8, 1, 64),
    minutes: readOption(args, 'minutes', 600, 1, 600),
    mostBytes: readOption(args, 'megabytes', 100, 1, 500) * 1e6,
  }
  const app = await openApp({ demo: true })
  const { fuzzApp } = await import('./load/fuzz-app.ts')
  return fuzzApp(app, how, say)
}
