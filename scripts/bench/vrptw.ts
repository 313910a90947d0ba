import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { checkPlan } from '@almanac/dispatch/checker/check-plan'
import { startPlanning } from '@almanac/dispatch/search/planner'
import { readVrptw } from './dispatch/read-vrptw.ts'

type Bench = { args: string[]; say: (line: string) => void }

const usage = 'npm run bench -- vrptw FOLDER [--seconds 1,5,10] [--clock wall|cpu] [--seed 1] [--only PART]'

function option(args: string[], name: string, usual: string): string {
  const at = args.findIndex((arg) => arg === `--${name}` || arg.startsWith(`--${name}=`))
  const found = args[at]
  if (found === undefined) return usual
  return found.includes('=') ? found.slice(name.length + 3) : (args[at + 1] ?? '')
}

/** Proven least distances by instance, from the folder's best-known.csv. */
function readBestKnown(folder: string): Map<string, number> {
  const file = path.join(folder, 'best-known.csv')
  if (!fs.existsSync(file)) throw new Error(`No best-known.csv in ${folder}: nothing to measure against. Usage: ${usage}`)
  const rows = fs.readFileSync(file, 'utf8').trim().split('\n').slice(1)
  return new Map(rows.map((row) => [row.split(',')[0] as string, Number(row.split(',')[2])]))
}

/**
 * The planner on Solomon's instances, one after another in one thread: gap to the proven least distance at each of the given seconds. By `--clock cpu` the seconds are
 * this process's own computing time (its helper threads' included), which a loaded machine does not lengthen. Every plan goes through the checker.
 */
export default async function vrptw({ args, say }: Bench) {
  const folder = args.find((arg, i) => !arg.startsWith('--') && !args[i - 1]?.startsWith('--'))
  if (folder === undefined) throw new Error(`Name the folder of the instances. Usage: ${usage}`)
  const seconds = option(args, 'seconds', '1,5,10').split(',').map(Number)
  if (!seconds.every((second, i) => second > (seconds[i - 1] ?? 0))) throw new Error(`--seconds must rise. Usage: ${usage}`)
  const clock = option(args, 'clock', 'wall')
  const only = option(args, 'only', '')
  const seed = Number(option(args, 'seed', '1'))
  const bestKnown = readBestKnown(folder)
  const names = [...bestKnown.keys()].filter((name) => name.includes(only) && fs.existsSync(path.join(folder, `${name}.txt`)))
  const byClass = new Map<string, number[][]>()
  const loadBefore = os.loadavg()[0] as number
  const now = () => (clock === 'cpu' ? (process.cpuUsage().user + process.cpuUsage().system) / 1e6 : performance.now() / 1e3)
  for (const name of names) {
    const problem = readVrptw(fs.readFileSync(path.join(folder, `${name}.txt`), 'utf8'))
    const began = now()
    const planner = startPlanning(problem, { seed })
    let iterations = 0
    const gaps = seconds.map((second) => {
      iterations += planner.improve(Number.MAX_SAFE_INTEGER, () => now() - began >= second)
      const plan = planner.best()
      const violations = checkPlan(problem, plan)
      if (violations.length > 0) throw new Error(`${name}: the checker refuses the plan: ${violations[0]?.sentence}`)
      return 100 * (plan.objective.total / 10 / (bestKnown.get(name) as number) - 1)
    })
    if (gaps.some((gap) => gap < -1e-9))
      say(`${name}: a checked plan is shorter than the folder's least distance; that value does not stand.`)
    say(`${name.padEnd(6)} ${gaps.map((gap) => `${gap.toFixed(3)} %`.padStart(9)).join(' ')}  ${iterations} iterations`)
    const group = name.replace(/\d\d$/, '')
    byClass.set(group, [...(byClass.get(group) ?? []), gaps])
  }
  const mean = (rows: number[][]) =>
    seconds.map((_, i) => Number((rows.reduce((sum, row) => sum + (row[i] as number), 0) / rows.length).toFixed(4)))
  const meanGapPercent = Object.fromEntries(
    [...byClass, ['all', [...byClass.values()].flat()] as const].map(([group, rows]) => [group, mean(rows)]),
  )
  for (const [group, gaps] of Object.entries(meanGapPercent))
    say(`${group.padEnd(6)} ${gaps.map((gap) => `${gap.toFixed(3)} %`.padStart(9)).join(' ')}`)
  const machine = { cores: os.cpus().length, loadBefore, loadAfter: os.loadavg()[0] as number }
  say(
    `Seconds of ${clock === 'cpu' ? 'computing time' : 'the wall clock'}; ${machine.cores} cores, load ${loadBefore.toFixed(1)} before, ${machine.loadAfter.toFixed(1)} after.`,
  )
  return { seconds, clock, seed, instances: names.length, meanGapPercent, machine, allChecked: true }
}
