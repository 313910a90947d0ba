import { readOption } from './load/options.ts'

type Bench = {
  args: string[]
  say: (line: string) => void
  openApp: (how: { demo: boolean; usualLimits: boolean }) => Promise<{ baseUrl: string; superUrl: string }>
}

/**
 * `--tries=10000 --clients=40`: that many wrong passwords for one owner, each with another made-up address, against a served app of its own. Says how many were checked,
 * whether the owner still gets in by a known device, whether another firm's requests went on, and how soon /healthz answered.
 */
export default async function guesses({ args, say, openApp }: Bench) {
  const how = { tries: readOption(args, 'tries', 10_000, 10, 1_000_000), clients: readOption(args, 'clients', 40, 1, 200) }
  const app = await openApp({ demo: false, usualLimits: true })
  const { guessAtApp } = await import('./load/guess-at-app.ts')
  return guessAtApp(app, how, say)
}
