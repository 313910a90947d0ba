import { buildProblem } from '../../packages/dispatch/propose/build-problem.ts'
import { explainNoFit } from '../../packages/dispatch/slots/explain-no-fit.ts'
import { rankSlots } from '../../packages/dispatch/slots/rank-slots.ts'
import { type CrewDisruption, whatIf } from '../../packages/dispatch/slots/what-if.ts'
import { inventedBoard } from '../../tests/support/dispatch/invented-board.ts'

type Bench = { args: string[]; say: (line: string) => void }

/** Wall and processor time of one call, in ms: on a busy machine only the second says something of the code. */
function timed<T>(work: () => T): { wall: number; cpu: number; result: T } {
  const cpu = process.cpuUsage()
  const started = performance.now()
  const result = work()
  const used = process.cpuUsage(cpu)
  return { wall: performance.now() - started, cpu: (used.user + used.system) / 1000, result }
}

function median(values: number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] as number
}

/** Item by item: the slots of one job over 20 crews × 10 days, why a job cannot be placed, and the day that breaks. `--iterations=N` for the search after a mishap. */
export default async function slots({ args, say }: Bench) {
  const iterations = Number(args.find((arg) => arg.startsWith('--iterations='))?.slice(13) ?? 3)
  const board = inventedBoard(5, { crews: 20, days: 10, perSheet: 4, waiting: 40 })
  const building = timed(() => buildProblem(board, { planUnknown: true }))
  if ('faults' in building.result) throw new Error(building.result.faults.join(' '))
  const built = building.result
  const placed = board.sheets.reduce((sum, sheet) => sum + sheet.visits.length, 0)
  say(`20 crews × 10 days, ${placed} visits placed, ${board.jobs.length - placed} jobs waiting.`)
  say(`Board read: ${building.wall.toFixed(0)} ms (${building.cpu.toFixed(0)} ms processor), once for all questions.`)
  const waiting = board.jobs.slice(-40)
  for (const job of waiting.slice(0, 10)) rankSlots(built, job.id)
  const asked = waiting.map((job) => timed(() => rankSlots(built, job.id)))
  const count = asked.map(({ result }) => ('slots' in result ? result.slots.length : 0))
  say(
    `Slots of one job: median ${median(asked.map(({ wall }) => wall)).toFixed(1)} ms, longest ${Math.max(...asked.map(({ wall }) => wall)).toFixed(1)} ms; median of processor time ${median(asked.map(({ cpu }) => cpu)).toFixed(1)} ms; median ${median(count)} slots.`,
  )
  const first = asked[0]?.result
  if (first !== undefined && 'slots' in first) for (const slot of first.slots.slice(0, 3)) say(`  ${slot.sentence}`)
  const heavy = { ...(waiting[0] as (typeof waiting)[number]), people: 3 }
  const hopeless = buildProblem({ ...board, jobs: board.jobs.map((job) => (job.id === heavy.id ? heavy : job)) }, { planUnknown: true })
  if ('faults' in hopeless) throw new Error(hopeless.faults.join(' '))
  const why = timed(() => explainNoFit(hopeless, heavy.id))
  say(`Why not: ${why.wall.toFixed(1)} ms. ${why.result}`)
  const sheet = board.sheets[0] as (typeof board.sheets)[number]
  const mishaps: [string, CrewDisruption][] = [
    ['crew off', { kind: 'sheet-off', sheetId: sheet.id }],
    ['one sick', { kind: 'fewer-people', sheetId: sheet.id, people: 1, skills: [] }],
    ['small van', { kind: 'other-vehicle', sheetId: sheet.id, capacity: { ft3: 5, lb: 400 } }],
  ]
  const breaks = mishaps.map(([name, mishap]) => {
    const answer = timed(() => whatIf(board, mishap, { seed: 1, iterations }))
    if ('faults' in answer.result) throw new Error(answer.result.faults.join(' '))
    const { proposal, sentence } = answer.result
    say(
      `What if, ${name}: ${answer.wall.toFixed(0)} ms (${answer.cpu.toFixed(0)} ms processor), ${proposal.violations.length} violations. ${sentence}`,
    )
    return { name, wallMs: answer.wall, cpuMs: answer.cpu, violations: proposal.violations.length, moves: proposal.differences.length }
  })
  return {
    slotsMedianMs: median(asked.map(({ wall }) => wall)),
    slotsMedianCpuMs: median(asked.map(({ cpu }) => cpu)),
    boardMs: building.wall,
    whyNotMs: why.wall,
    breaks,
  }
}
