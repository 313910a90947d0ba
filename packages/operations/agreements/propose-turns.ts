import type { ProposeTurns } from '@almanac/contract/agreements'
import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { type Command, runCommand } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { type AgreementKind, jobOfAgreement, type TurnState } from '@almanac/records/agreement'
import type { JobState } from '@almanac/records/job-state'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { lastOfMonth, monthOf, standingOf } from '@almanac/service-rules/agreements/agreement-turns'
import { companyFacts } from '../shared/company-facts.ts'
import type { ProposeInside } from '../shared/propose-job.ts'
import { hasTurnOn } from './turn-due.ts'

type Asked = ProposeTurns['turns'][number]
type Result = Asked & ({ status: 'proposed'; jobId: string } | { status: 'refused'; reason: string })

/** The agreements, locked in id order: two people who propose the same month make one job of each turn. */
async function lockAgreements(tx: Tx, companyId: string, ids: string[]) {
  await lockRows(tx, companyId, 'agreement', ids)
  const found = await tx.agreement.findMany({
    where: { companyId, id: { in: ids }, archivedAt: null },
    include: { terms: { orderBy: { fromDay: 'desc' }, take: 1 }, turns: { include: { job: { select: { state: true } } } } },
  })
  return new Map(found.map((one) => [one.id, one]))
}
type Locked = Awaited<ReturnType<typeof lockAgreements>> extends Map<string, infer A> ? A : never

async function proposeTurn(
  tx: Tx,
  command: Command,
  agreement: Locked,
  asked: Asked,
  days: DueDays,
  propose: ProposeInside,
): Promise<Result> {
  const { companyId } = command
  const refused = (reason: string): Result => ({ ...asked, status: 'refused', reason })
  const { dueDay } = asked
  const kept = agreement.turns.find((one) => one.dueDay.getTime() === dateOf(dueDay).getTime())
  const jobState = (kept?.job?.state ?? null) as JobState | null
  const standing = standingOf(kept && { dueDay, state: kept.state as TurnState, jobState })
  if (standing === 'under-way') return refused('A job for this turn is already open.')
  if (standing !== 'open') return refused('This turn is done or skipped already.')
  if (!kept && !hasTurnOn(agreement, dueDay)) return refused('The agreement has no turn on this day any more.')
  const kind = jobOfAgreement[agreement.kind as AgreementKind]
  const { jobId } = await propose(tx, command, {
    ...{ siteId: agreement.siteId, kind, ...days },
    ...(agreement.softenerId ? { softenerId: agreement.softenerId } : {}),
    ...(agreement.notes ? { notes: agreement.notes } : {}),
  })
  const data = { state: 'proposed', jobId }
  if (kept)
    await tx.agreementTurn.update({ where: { companyId_id: { companyId, id: kept.id } }, data: { ...data, version: { increment: 1 } } })
  else await tx.agreementTurn.create({ data: { companyId, id: newId(), agreementId: agreement.id, dueDay: dateOf(dueDay), ...data } })
  await command.announce('agreement', agreement.id)
  return { ...asked, status: 'proposed', jobId }
}

type DueDays = { dueEarliest: string; dueLatest: string }

/**
 * Makes jobs of turns that a person saw in a month and approved, each to be done within it. Answers for each: what was proposed, done or skipped meanwhile is
 * refused by itself and the others go on. An agreement that is not there is a 404 for all, and nothing is added.
 */
export async function proposeTurns(
  scope: Scope & { personId: string },
  input: ProposeTurns,
  propose: ProposeInside,
): Promise<{ results: Result[] }> {
  return runCommand(scope, 'agreements.propose', input, async (tx, command) => {
    const { companyId } = scope
    const { month, turns } = input
    const { today } = await companyFacts(tx, companyId)
    if (month < monthOf(today)) throw new AppError('invalid', 'This month is over. Nothing was proposed; choose this month or a later one.')
    const found = await lockAgreements(tx, companyId, [...new Set(turns.map((one) => one.agreementId))])
    const first = `${month}-01`
    const days = { dueEarliest: first > today ? first : today, dueLatest: lastOfMonth(month) }
    const results: Result[] = []
    // A turn asked for twice is one.
    const wanted = new Map(turns.map((one) => [`${one.agreementId} ${one.dueDay}`, one]))
    for (const asked of wanted.values()) {
      const agreement = found.get(asked.agreementId)
      if (!agreement) throw notFound('agreement')
      results.push(await proposeTurn(tx, command, agreement, asked, days, propose))
    }
    return { results }
  })
}
