import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readPlan } from '@almanac/database/read/plan-page'
import { lostPromises } from '@almanac/database/sql/lost-promises'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { drawFrom, editAtRandom, type Undone } from '../../../tests/support/random-edits.ts'
import { addAbsence } from '../crews/add-absence.ts'
import { acceptPlan } from './accept-plan.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { proposeJob } from './propose-job.ts'
import { startPlan } from './start-plan.ts'
import { DAY, type Firm, makeBed, makeColleague, makeFirm, makeVehicle } from './test-firm.ts'
import { workOutPlan } from './work-out-plan.ts'

/** More edits, another beginning: PROMISE_EDITS=10000 PROMISE_SEED=7 npm test unit packages/operations/jobs/promises-kept.test.ts */
const EDITS = Number(process.env.PROMISE_EDITS ?? 80)
const SEED = Number(process.env.PROMISE_SEED ?? 7)
/** So many on one company, whose history grows with each; then another company, and the next seed. */
const ROUND = 400
const ROUNDS = Array.from({ length: Math.ceil(EDITS / ROUND) }, (_, n) => ({
  seed: SEED + n,
  edits: Math.min(ROUND, EDITS - n * ROUND),
}))
/** After so many edits a plan is made and all of it accepted: of thousands less often, because each takes seconds. */
const PLAN_EVERY = EDITS > ROUND ? 130 : 40

const id = () => ({ commandId: newId() })
let firm: Firm
let colleagues: string[]
let sheets: string[]

beforeAll(() => setClock(() => new Date('2026-12-02T16:00:00Z')))
beforeEach(async () => {
  firm = await makeFirm()
  colleagues = [await makeColleague(firm, 'Ruth'), await makeColleague(firm, 'Ada'), await makeColleague(firm, 'Joss')]
  sheets = []
  for (const [n, colleagueId] of colleagues.entries()) {
    const crew = { name: `Crew ${n}`, colleagueIds: [colleagueId], vehicleId: await makeVehicle(firm, `van ${n}`) }
    for (const day of [DAY, '2026-12-04'])
      sheets.push((await openDaySheet(firm, { ...id(), ...crew, from: '08:00', until: '17:00', day })).crewDayId)
  }
  for (let n = 0; n < 12; n++) {
    const { siteId } = await makeBed(firm, `Weir Road ${n}`)
    await proposeJob(firm, { ...id(), siteId, kind: 'annual-visit', dueLatest: '2026-12-04' })
  }
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

/** People who are in two places at once. */
async function inTwoPlaces(): Promise<string[]> {
  const where = { companyId: firm.companyId, released: false }
  const taken = await inCompany(firm, (tx) => tx.assignment.findMany({ where, orderBy: [{ colleagueId: 'asc' }, { startsAt: 'asc' }] }))
  return taken.flatMap((one, n) => {
    const next = taken[n + 1]
    return next?.colleagueId === one.colleagueId && next.startsAt < one.endsAt ? [one.visitId] : []
  })
}

const broken = () => inCompany(firm, (tx) => lostPromises(tx, firm.companyId))

/** A way round a crew that is away, or the days planned afresh; accepted whole. A refusal changes nothing. */
async function planAndAccept(draw: (n: number) => number): Promise<string> {
  const visits = await inCompany(firm, (tx) =>
    tx.visit.findMany({ where: { companyId: firm.companyId, state: 'booked' }, orderBy: { id: 'asc' } }),
  )
  const crewDayId = visits[draw(visits.length || 1)]?.crewDayId ?? ''
  const asked = visits.length === 0 ? { kind: 'week' as const } : { kind: 'sheet-off' as const, crewDayId }
  try {
    const { planId } = await startPlan(firm, { ...id(), fromDay: DAY, days: 2, asked })
    await workOutPlan({ companyId: firm.companyId, planId })
    const { version, differences } = await readPlan(firm, planId)
    await acceptPlan(firm, { ...id(), planId, version, differenceIds: differences.map((one) => one.id) })
    return `plan ${asked.kind}, ${differences.length} accepted`
  } catch (error) {
    return `plan ${asked.kind}: ${error instanceof Error ? error.message : error}`
  }
}

test.each(ROUNDS)(
  'of $edits random edits none loses a promise without an entry on the list to call (seed $seed)',
  {
    timeout: 60_000 + Math.min(EDITS, ROUND) * 1000,
  },
  async ({ seed, edits }) => {
    const draw = drawFrom(seed)
    const undone: Undone[] = []
    const plans: string[] = []
    const counts = new Map<string, number>()
    for (let n = 1; n <= edits; n++) {
      const what = n % PLAN_EVERY === 0 ? await planAndAccept(draw) : await editAtRandom(firm, sheets, draw, undone)
      if (n % PLAN_EVERY === 0) expect({ edit: n, what, twice: await inTwoPlaces() }).toEqual({ edit: n, what, twice: [] })
      if (n === 20)
        await addAbsence(firm, {
          ...id(),
          of: 'person',
          subjectId: colleagues[0] ?? '',
          fromDay: '2026-12-04',
          untilDay: '2026-12-04',
          word: null,
          confirmed: true,
        })
      if (what.startsWith('plan')) plans.push(what)
      const kind = what.startsWith('plan') ? 'plan' : (what.split(':')[0] ?? what)
      counts.set(kind, (counts.get(kind) ?? 0) + (what.includes(':') ? 0 : 1))
      expect({ edit: n, what, lost: await broken() }).toEqual({ edit: n, what, lost: [] })
    }
    const entries = await inCompany(firm, (tx) =>
      tx.callBack.groupBy({ by: ['state'], where: { companyId: firm.companyId, cause: 'promise' }, _count: true }),
    )
    // A run that lost, gave back and told nothing would show nothing.
    expect(entries.map((one) => one.state)).toEqual(expect.arrayContaining(['kept', 'open']))
    for (const kind of ['book', 'move', 'promise', 'take-off', 'undo', 'hours', 'length'])
      expect([kind, counts.get(kind) ?? 0]).not.toEqual([kind, 0])
    expect(plans).toContainEqual(expect.stringMatching(/^plan [a-z-]+, [1-9]\d* accepted$/))
  },
)
