import { isDeepStrictEqual } from 'node:util'
import type { AcceptPlan, PlanAsked } from '@almanac/contract/plans'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { inCompany, type Scope } from '@almanac/database/in-company'
import type { PlanBoardRows } from '@almanac/database/read/plan-board'
import { runCommand } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { type Applied, applyDifferences } from '@almanac/dispatch/propose/apply-differences'
import type { Board } from '@almanac/dispatch/propose/board'
import type { Difference } from '@almanac/dispatch/propose/differences'
import { sayList, sayTime } from '@almanac/dispatch/propose/say'
import { freePromise } from '@almanac/dispatch/slots/free-promise'
import { now } from '@almanac/runtime/clock'
import { AppError, notFound } from '@almanac/runtime/errors'
import { changeCrew } from './change-crew.ts'
import { withDrives } from './drive-table.ts'
import { askedOf, mishapOf } from './mishap-of.ts'
import type { StoredProposal } from './plan-aside.ts'
import { readBoard } from './read-board.ts'
import { openTravelDesk } from './travel-desk.ts'
import { type PlannedPlace, writePlaces } from './write-places.ts'

type Names = ReadonlyMap<string, string>

/** Sites by the words that stand for them on a board. */
function namesOf({ sheets, waiting }: PlanBoardRows): Names {
  return new Map([...sheets.flatMap((sheet) => sheet.visits), ...waiting].map((one) => [`«${one.siteId}»`, one.siteLabel]))
}
const nameIn = (board: Pick<Board, 'jobs'>, names: Names, jobId: string) =>
  names.get(board.jobs.find((job) => job.id === jobId)?.label ?? '') ?? 'A site'

/** Visits or jobs chosen that are not what they were when the plan was made. */
function stale(jobIds: readonly string[], before: Pick<Board, 'jobs'>, names: Names): AppError {
  const sites = [...new Set(jobIds.map((jobId) => nameIn(before, names, jobId)))]
  const [verb, it] = sites.length === 1 ? ['has', 'it'] : ['have', 'them']
  return new AppError(
    'conflict',
    `${sites.join(', ')} ${verb} changed since this plan was made. Nothing was changed; uncheck ${it} and accept the others, or make the plan again.`,
  )
}

/** Somebody stands on the sheet by now, or was left as they are, and what was chosen leaves no time for them. */
function inTheWay({ pushed, board }: Applied, written: Pick<Board, 'sheets'>, names: Names): AppError {
  const [first] = pushed
  const stands = written.sheets.flatMap((sheet) => sheet.visits).find((visit) => visit.jobId === first?.jobId)?.startMinute ?? 0
  return new AppError(
    'conflict',
    `${nameIn(board, names, first?.jobId ?? '')} is booked for ${sayTime(stands, board)}, and these changes would push it to ${sayTime(first?.startMinute ?? 0, board)}. Nothing was changed; uncheck the changes before it, or take its own change too.`,
  )
}

/** A plan for a mishap let other crews keep what was promised with the crew that cannot come: so does the check of it. */
function freed(board: Board, asked: PlanAsked, differences: readonly Difference[]): Board {
  const sheet = asked.kind === 'week' || asked.kind === 'crews' ? undefined : board.sheets.find((one) => one.id === asked.crewDayId)
  if (!sheet) return board
  const stranded = new Set(differences.filter((one) => one.fromSheetId === sheet.id && one.toSheetId !== sheet.id).map((one) => one.jobId))
  return { ...board, jobs: board.jobs.map((job) => (stranded.has(job.id) ? freePromise(job, sheet, board) : job)) }
}

/** What is accepted is what was shown: drives may have changed since, by the pace that the owner took over or by a travel server. */
function otherTimes(moved: Applied['moved'], differences: readonly Difference[], board: Board): AppError {
  const shown = new Map(differences.map((one) => [one.jobId, one.startMinute]))
  const times = moved.map(({ jobId, startMinute }) => `${sayTime(startMinute, board)} instead of ${sayTime(shown.get(jobId) ?? 0, board)}`)
  const visits = moved.length === 1 ? 'One visit' : `${moved.length} visits`
  return new AppError(
    'conflict',
    `${visits} can’t start when this plan shows (${sayList(times)}): drives take longer than when it was made, or too little of it was taken. Nothing was changed; make the plan again.`,
  )
}

type Standing = Pick<Board, 'sheets' | 'jobs'>

/** A job as a plan leans on it: what it needs, and where and when it stands. As it would come back from where plans are stored. */
function standing(board: Standing, jobId: string): unknown {
  const sheet = board.sheets.find((one) => one.visits.some((visit) => visit.jobId === jobId))
  const job = board.jobs.find((one) => one.id === jobId)
  if (!job) return null
  const { riskPerDay: _risk, ...facts } = job
  const at = sheet?.visits.find((visit) => visit.jobId === jobId)?.startMinute
  return JSON.parse(JSON.stringify({ ...facts, sheetId: sheet?.id ?? null, at: at ?? null }))
}

/** Sheets with their hours, people, room and visits, but for what goes on with the clock. */
function sheetsOf(board: Standing, ids: ReadonlySet<string>): unknown {
  const sheets = board.sheets.filter((sheet) => ids.has(sheet.id)).map(({ shift: _now, breaks: _left, ...sheet }) => sheet)
  return JSON.parse(JSON.stringify(sheets))
}

/** A plan for missing people or a broken vehicle says who goes out instead, and is worth accepting even where no visit has to move. */
const changesCrew = (asked: PlanAsked) => asked.kind === 'other-vehicle' || asked.kind === 'fewer-people'

type Chosen = { differences: Difference[]; sheetIds: Set<string>; jobIds: Set<string> }

function chosenOf({ differences }: StoredProposal, ids: readonly string[]): Chosen {
  const wanted = new Set(ids)
  const chosen = differences.filter((one) => wanted.has(one.id))
  if (chosen.length < wanted.size) throw notFound('change of this plan')
  const sheetIds = new Set(chosen.flatMap((one) => [one.fromSheetId, one.toSheetId].filter((id) => id !== null)))
  return { differences: chosen, sheetIds, jobIds: new Set(chosen.map((one) => one.jobId)) }
}

const read = async (tx: Tx, companyId: string, planId: string) => {
  const plan = await tx.planProposal.findUnique({ where: { companyId_id: { companyId, id: planId } } })
  if (!plan) throw notFound('plan')
  const days = { fromDay: dayOf(plan.fromDay), untilDay: dayOf(plan.untilDay), at: now(), ...mishapOf(askedOf(plan.asked)) }
  return { plan, draft: await readBoard(tx, companyId, days) }
}

/**
 * Takes some or all of what a plan changes, in one transaction; the rest stays open. The checker looks at the sheets as they stand by now, before anything is
 * written: whatever a colleague booked there meanwhile keeps its time, or what was chosen is refused, as is half of a plan that does not fit by itself.
 */
export async function acceptPlan(scope: Scope & { personId: string }, input: AcceptPlan) {
  const { companyId } = scope
  // Drives may ask a server, which no transaction must wait for: the board is read twice, and has to be the same both times.
  const first = await inCompany(scope, (tx) => read(tx, companyId, input.planId))
  const board = await withDrives(first.draft, await openTravelDesk(scope, first.draft.timeZone))
  return runCommand(scope, 'jobs.accept-plan', input, async (tx, command) => {
    await lockRows(tx, companyId, 'plan_proposal', [input.planId])
    const { plan, draft } = await read(tx, companyId, input.planId)
    const { id, version, state } = plan
    const unchanged = version === input.version && state === 'ready'
    await expectChanged(unchanged ? 1 : 0, 'plan', input.version, { state: 'accepted' }, async () => ({ id, version, state }))
    const asked = askedOf(plan.asked)
    if (asked.kind === 'crews') throw notFound('plan')
    if (input.differenceIds.length === 0 && !changesCrew(asked))
      throw new AppError('conflict', 'No change was chosen, so nothing was changed.')
    const proposal = plan.proposal as unknown as StoredProposal
    const chosen = chosenOf(proposal, input.differenceIds)
    const { differences, sheetIds, jobIds } = chosen
    const before = plan.board as unknown as Board
    const names = namesOf(draft.rows)
    // Only what is chosen has to be what it was; who came onto a sheet since is looked at below. A mishap's board has the stranded jobs off their sheet already.
    const changed = [...jobIds].filter(
      (jobId) => plan.kind === 'week' && !isDeepStrictEqual(standing(draft.board, jobId), standing(before, jobId)),
    )
    if (changed.length > 0) throw stale(changed, before, names)
    const isRead = isDeepStrictEqual(sheetsOf(draft.board, sheetIds), sheetsOf(board, sheetIds))
    const moving = [...jobIds].filter((jobId) => !isDeepStrictEqual(standing(draft.board, jobId), standing(board, jobId)))
    if (!isRead || moving.length > 0)
      throw new AppError('conflict', 'A colleague is changing these sheets right now. Nothing was changed; accept again.')
    const applied = applyDifferences(
      freed(board, asked, differences),
      { differences: proposal.differences, spots: new Map(proposal.spots) },
      input.differenceIds,
    )
    if ('faults' in applied) throw new AppError('conflict', `${applied.faults.join(' ')} Nothing was changed.`)
    if (applied.moved.length > 0) throw otherTimes(applied.moved, differences, board)
    if (applied.violations.length > 0)
      throw new AppError('conflict', 'These changes don’t fit together on their own. Nothing was changed; take the others too, or fewer.')
    if (applied.pushed.length > 0) throw inTheWay(applied, board, names)
    const written = await writePlaces(tx, command, placesOf(applied.board, chosen))
    if (changesCrew(asked)) await changeCrew(tx, command, asked)
    // What was not taken stays open, but where the crew itself has changed.
    const open = changesCrew(asked) ? [] : proposal.differences.filter((one) => !jobIds.has(one.jobId))
    const left: StoredProposal = { ...proposal, differences: open, taken: (proposal.taken ?? 0) + differences.length }
    const after = await tx.planProposal.update({
      where: { companyId_id: { companyId, id } },
      data: { state: open.length === 0 ? 'accepted' : 'ready', proposal: left as object, version: { increment: 1 } },
    })
    await command.audit('accepted', 'plan', id, { differences: differences.length })
    await command.announce('plan', id, after.version)
    return { planId: id, version: after.version, changed: written }
  })
}

/** Where each job that was chosen stands afterwards, and which are taken off; nobody else is touched. */
function placesOf(board: Board, { differences, sheetIds, jobIds }: Chosen): PlannedPlace[] {
  const placed = board.sheets
    .filter((sheet) => sheetIds.has(sheet.id))
    .flatMap((sheet) =>
      sheet.visits.flatMap(({ jobId, startMinute }) =>
        startMinute === undefined || !jobIds.has(jobId) ? [] : [{ id: jobId, crewDayId: sheet.id, day: sheet.date, startMinute }],
      ),
    )
  const off = differences
    .filter((one) => one.toSheetId === null)
    .map((one) => ({ id: one.jobId, crewDayId: null, day: null, startMinute: null }))
  return [...placed, ...off]
}
