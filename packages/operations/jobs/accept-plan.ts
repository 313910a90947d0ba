import { isDeepStrictEqual } from 'node:util'
import type { AcceptPlan, PlanAsked } from '@almanac/contract/plans'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { inCompany, type Scope } from '@almanac/database/in-company'
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

const stale = () =>
  new AppError(
    'conflict',
    'The day sheets have changed since this plan was made. Nothing was changed; make the plan again. It takes a few seconds.',
  )

/** A plan for a mishap let other crews keep what was promised with the crew that cannot come: so does the check of it. */
function freed(board: Board, asked: PlanAsked, differences: readonly Difference[]): Board {
  const sheet = asked.kind === 'week' ? undefined : board.sheets.find((one) => one.id === asked.crewDayId)
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

/** What of a board a plan leans on: sheets with their hours, people, room and visits. If any of it differs, the plan is of another day. */
function leansOn(board: Pick<Board, 'sheets' | 'jobs'>, { sheetIds, jobIds }: Chosen) {
  const sheets = board.sheets.filter((sheet) => sheetIds.has(sheet.id)).map(({ shift: _now, breaks: _left, ...sheet }) => sheet)
  const jobs = board.jobs.filter((job) => jobIds.has(job.id)).map(({ riskPerDay: _risk, ...job }) => job)
  // As it would come back from where plans are stored.
  return JSON.parse(JSON.stringify({ sheets, jobs })) as object
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
 * Takes some or all of what a plan changes, in one transaction. The checker looks at the sheets as they would then stand, before anything is written; a plan
 * whose sheets or jobs have changed since is refused, and half of a plan that does not fit by itself is too.
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
    if (input.differenceIds.length === 0 && !changesCrew(asked))
      throw new AppError('conflict', 'No change was chosen, so nothing was changed.')
    const proposal = plan.proposal as unknown as StoredProposal
    const chosen = chosenOf(proposal, input.differenceIds)
    const { differences, sheetIds } = chosen
    const before = plan.board as unknown as Board
    // A mishap's board has the stranded jobs off their sheet already: only what is left of it can be compared.
    const stands = leansOn(draft.board, chosen)
    const isSame = plan.kind !== 'week' || isDeepStrictEqual(stands, leansOn(before, chosen))
    if (!isSame || !isDeepStrictEqual(stands, leansOn(board, chosen))) throw stale()
    const applied = applyDifferences(
      freed(board, asked, differences),
      { differences: proposal.differences, spots: new Map(proposal.spots) },
      input.differenceIds,
    )
    if ('faults' in applied) throw new AppError('conflict', `${applied.faults.join(' ')} Nothing was changed.`)
    if (applied.moved.length > 0) throw otherTimes(applied.moved, differences, board)
    if (applied.violations.length > 0)
      throw new AppError('conflict', 'These changes don’t fit together on their own. Nothing was changed; take the others too, or fewer.')
    const changed = await writePlaces(tx, command, placesOf(applied.board, differences, sheetIds))
    if (changesCrew(asked)) await changeCrew(tx, command, asked)
    const after = await tx.planProposal.update({
      where: { companyId_id: { companyId, id } },
      data: { state: 'accepted', version: { increment: 1 } },
    })
    await command.audit('accepted', 'plan', id, { differences: differences.length })
    await command.announce('plan', id, after.version)
    return { planId: id, version: after.version, changed }
  })
}

/** Where each job of the sheets that change stands afterwards, and which are taken off. */
function placesOf(board: Board, differences: readonly Difference[], sheetIds: ReadonlySet<string>): PlannedPlace[] {
  const placed = board.sheets
    .filter((sheet) => sheetIds.has(sheet.id))
    .flatMap((sheet) =>
      sheet.visits.flatMap(({ jobId, startMinute }) =>
        startMinute === undefined ? [] : [{ id: jobId, crewDayId: sheet.id, day: sheet.date, startMinute }],
      ),
    )
  const off = differences
    .filter((one) => one.toSheetId === null)
    .map((one) => ({ id: one.jobId, crewDayId: null, day: null, startMinute: null }))
  return [...placed, ...off]
}
