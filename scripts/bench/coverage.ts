import os from 'node:os'
import { Worker } from 'node:worker_threads'
import type { CoverageShare } from './coverage/worker.ts'
import { type CoverageTrial, tallyCoverage } from './simulate/coverage-study.ts'
import { measureWorld } from './worlds/measure-world.ts'
import { WORLDS, type World } from './worlds/simulate-world.ts'

type Bench = { args: string[]; say: (line: string) => void }

const usage =
  'npm run bench -- coverage [--repetitions 2500] [--seed 1] [--beds 80] [--threads 2], or coverage --world NAME|all [--firms 40] [--seed 1] [--places 120]'

function option(args: string[], name: string, usual: number, least: number): number {
  const at = args.findIndex((arg) => arg === `--${name}` || arg.startsWith(`--${name}=`))
  const found = args[at]
  const value = found === undefined ? usual : Number(found.includes('=') ? found.slice(name.length + 3) : args[at + 1])
  if (!Number.isInteger(value) || value < least) throw new Error(`--${name} must be a whole number from ${least} on. Usage: ${usage}`)
  return value
}

/** The world asked for by `--world`; null without one. */
function worldsAsked(args: string[]): World[] | null {
  const at = args.findIndex((arg) => arg === '--world' || arg.startsWith('--world='))
  if (at < 0) return null
  const name = args[at]?.includes('=') ? args[at]?.slice(8) : args[at + 1]
  const found = WORLDS.filter((world) => name === 'all' || world === name)
  if (found.length === 0) throw new Error(`--world must be one of ${WORLDS.join(', ')}, or all. Usage: ${usage}`)
  return found
}

const percent = (share: number) => `${(100 * share).toFixed(1)} %`

/** Firms whose records arise as in life, simulated without the model's own code: what the forecast said of them against what is true. */
function coverageOfWorlds(worlds: readonly World[], args: string[], say: (line: string) => void) {
  const [firms, seed] = [option(args, 'firms', 40, 2), option(args, 'seed', 1, 0)]
  const places = args.some((arg) => arg.startsWith('--places')) ? option(args, 'places', 120, 5) : null
  say(
    'world           windows of 80 %     counts 12 / 24 months (± s.e.)   expected/came 12 / 24   overdue said / true   Brier gain over age-only Weibull / Kaplan–Meier',
  )
  return worlds.map((world) => {
    const one = measureWorld(world, firms, seed, places)
    say(
      `${world.padEnd(15)} ${percent(one.windows)} ± ${percent(one.windowsError)}   ${percent(one.counts12)} / ${percent(one.counts24)} (± ${percent(one.countsError)})   ${one.ratio12.toFixed(3)} / ${one.ratio24.toFixed(3)}   ${one.overdueSaid.toFixed(2)} / ${one.overdueTrue.toFixed(2)}   ${one.overWeibull.toFixed(1)} % / ${one.overKaplanMeier.toFixed(1)} %`,
    )
    return { world, ...one }
  })
}

/** One thread's repetitions; its trials are handed over one repetition at a time. */
function runShare(share: CoverageShare, take: (trials: CoverageTrial[]) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./coverage/worker.ts', import.meta.url), { workerData: share })
    worker.on('message', take)
    worker.on('error', reject)
    worker.on('exit', (code) => (code === 0 ? resolve() : reject(new Error(`A thread of the study ended with code ${code}.`))))
  })
}

/**
 * Simulated firms with a truth drawn from all that the forecast believes beforehand: how often the 80 % intervals of parameters, due dates and counts hold it, with
 * the standard error of each share. Repetitions are independent and have seeds of their own; any seed will do.
 */
export default async function coverage({ args, say }: Bench) {
  const worlds = worldsAsked(args)
  if (worlds !== null) return { worlds: coverageOfWorlds(worlds, args, say) }
  const repetitions = option(args, 'repetitions', 2500, 1)
  const seed = option(args, 'seed', 1, 0)
  const beds = option(args, 'beds', 80, 20)
  const threads = Math.min(option(args, 'threads', Math.min(2, os.cpus().length), 1), repetitions)
  const began = performance.now()
  const trials: CoverageTrial[] = []
  let done = 0
  const take = (own: CoverageTrial[]) => {
    trials.push(...own)
    done++
    if (done % Math.max(1, Math.floor(repetitions / 10)) === 0) say(`${done} of ${repetitions} firms`)
  }
  await Promise.all(Array.from({ length: threads }, (_, first) => runShare({ first, step: threads, repetitions, beds, seed }, take)))
  const table = tallyCoverage(trials)
  say(`${'80 % intervals of'.padEnd(26)}hold the truth in   standard error   off by`)
  for (const { name, coverage: share, standardError } of table)
    say(
      `${name.padEnd(26)}${(100 * share).toFixed(1).padStart(13)} %   ${(100 * standardError).toFixed(2).padStart(12)}   ${((share - 0.8) / Math.sqrt(0.16 / repetitions)).toFixed(1).padStart(5)} s.e.`,
    )
  return { repetitions, seed, beds, threads, seconds: Math.round((performance.now() - began) / 1000), table }
}
