import fs from 'node:fs'
import path from 'node:path'
import { checkLinkedPlan } from './dispatch/linked/check-linked-plan.ts'
import { linkedFaults } from './dispatch/linked/linked-faults.ts'
import { startLinkedPlanning } from './dispatch/linked/plan-linked.ts'
import { readCrewsOfTwo } from './dispatch/read-crews-of-two.ts'

type Bench = { args: string[]; say: (line: string) => void }

function option(args: string[], name: string, usual: number): number {
  const at = args.findIndex((arg) => arg === `--${name}` || arg.startsWith(`--${name}=`))
  if (at < 0) return usual
  const value = Number(args[at]?.split('=')[1] ?? args[at + 1])
  if (!(value > 0)) throw new Error(`--${name} takes a number above 0.`)
  return value
}

/** The `total_cost` column of a folder's best-known.md, by instance file. */
function readBestKnown(folder: string): Map<string, number> {
  const text = fs.readFileSync(path.join(folder, 'best-known.md'), 'utf8')
  const rows = text.split('\n').map((line) => line.split('|').map((cell) => cell.trim()))
  return new Map(rows.flatMap((cells) => (cells[1]?.endsWith('.json') ? [[cells[1], Number(cells[5])] as const] : [])))
}

/** `crews FOLDER --seconds 10 [--seed 1]`: the planner of linked visits on every instance of the folder, one core, each plan checked; gap to the best known cost. Seconds are this
 * process's processor time, so that a busy machine does not change the figures. */
export default async function crews({ args, say }: Bench) {
  const folder = args.find((arg, i) => !arg.startsWith('--') && !args[i - 1]?.startsWith('--'))
  if (folder === undefined) throw new Error('Say where the instances are: npm run bench -- crews FOLDER --seconds 10')
  const seconds = option(args, 'seconds', 10)
  const seed = option(args, 'seed', 1)
  const best = readBestKnown(folder)
  const only = args.find((arg) => arg.startsWith('--only='))?.slice(7) ?? ''
  const names = fs.readdirSync(folder).filter((name) => name.endsWith('.json') && name.includes(only))
  const gaps: number[] = []
  let violations = 0
  say('instance                          cost   best known    gap %   steps   violations')
  for (const name of names) {
    const problem = readCrewsOfTwo(fs.readFileSync(path.join(folder, name), 'utf8'))
    const faults = linkedFaults(problem)
    if (faults.length > 0) throw new Error(`${name}: ${faults.join(' ')}`)
    const started = process.cpuUsage().user
    const planner = startLinkedPlanning(problem, { seed })
    const steps = planner.improve(Number.MAX_SAFE_INTEGER, () => process.cpuUsage().user - started >= seconds * 1e6)
    const plan = planner.best()
    const found = checkLinkedPlan(problem, plan)
    for (const violation of found.slice(0, 3)) say(`  ${name}: ${violation.sentence}`)
    violations += found.length
    const known = best.get(name)
    const gap = known === undefined ? Number.NaN : (100 * (plan.total - known)) / known
    if (known !== undefined) gaps.push(gap)
    say(
      `${name.padEnd(30)} ${plan.total.toFixed(3).padStart(8)} ${(known ?? 0).toFixed(3).padStart(10)} ${gap.toFixed(2).padStart(8)} ${String(steps).padStart(9)} ${found.length}`,
    )
  }
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / Math.max(1, gaps.length)
  const worst = Math.max(...gaps)
  say(
    `${names.length} instances, ${seconds} s of processor time each, seed ${seed}: mean gap ${mean.toFixed(2)} %, worst ${worst.toFixed(2)} %, ${violations} violations.`,
  )
  return { instances: names.length, seconds, seed, meanGapPercent: mean, worstGapPercent: worst, violations }
}
