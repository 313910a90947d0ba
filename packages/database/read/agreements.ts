import type { AgreementEnd, AgreementKind, PricePer, TurnState } from '@almanac/records/agreement'
import type { JobKind } from '@almanac/records/job-kind'
import type { JobState } from '@almanac/records/job-state'
import type { Tx } from '../client.ts'
import { dateOf, dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'

const PARTS = {
  terms: { orderBy: { fromDay: 'desc' } },
  turns: {
    include: {
      job: {
        select: {
          id: true,
          kind: true,
          state: true,
          dueLatest: true,
          visits: { where: { state: 'closed' }, orderBy: { startsAt: 'desc' }, take: 1 },
        },
      },
    },
  },
  softener: { select: { label: true } },
  site: {
    select: {
      label: true,
      town: true,
      tenures: { where: { toDay: null }, select: { customer: { select: { name: true } } }, orderBy: { id: 'asc' }, take: 1 },
    },
  },
} satisfies Prisma.AgreementInclude

type Row = Prisma.AgreementGetPayload<{ include: typeof PARTS }>

/** What a visit's close-out keeps of the steps and readings that a round is about. */
type CloseOut = {
  checks?: { stepId: string; note?: string | null }[]
  measurements?: { kind: string; value: number }[]
}

const SALT = ['enough', 'low', 'bridged', 'empty'] as const

function turnOf(turn: Row['turns'][number]) {
  const closeOut = turn.state === 'done' ? ((turn.job?.visits[0]?.closeOut ?? null) as CloseOut | null) : null
  const salt = closeOut?.checks?.find((one) => one.stepId === 'salt')?.note
  return {
    dueDay: dayOf(turn.dueDay),
    version: turn.version,
    state: turn.state as TurnState,
    jobState: (turn.job?.state ?? null) as JobState | null,
    /** The last day in which its job is to be done. */
    jobDueDay: dayOf(turn.job?.dueLatest ?? null),
    job: turn.job && { id: turn.job.id, kind: turn.job.kind as JobKind, state: turn.job.state as JobState },
    doneDay: dayOf(turn.doneDay),
    reason: turn.reason,
    outletHardnessGpg: closeOut?.measurements?.find((one) => one.kind === 'outletHardnessGpg')?.value ?? null,
    salt: SALT.find((one) => one === salt) ?? null,
  }
}

function agreementOf(row: Row) {
  const terms = row.terms.map((term) => ({
    id: term.id,
    fromDay: dayOf(term.fromDay),
    untilDay: dayOf(term.untilDay),
    price: { minor: term.priceMinor, per: term.pricePer as PricePer },
  }))
  return {
    id: row.id,
    version: row.version,
    siteId: row.siteId,
    siteLabel: row.site.label,
    town: row.site.town,
    customerName: row.site.tenures[0]?.customer.name ?? null,
    kind: row.kind as AgreementKind,
    rule: row.rule,
    firstDay: dayOf(row.firstDay),
    countsFrom: dayOf(row.countsFrom),
    softenerLabel: row.softener?.label ?? null,
    notes: row.notes,
    /** Its price lines follow each other, so the newest says how long it is agreed. */
    untilDay: terms[0]?.untilDay ?? null,
    endedDay: dayOf(row.endedDay),
    endWhy: row.endWhy as AgreementEnd | null,
    terms,
    turns: new Map(row.turns.map((turn) => [dayOf(turn.dueDay), turnOf(turn)])),
  }
}
export type Agreement = ReturnType<typeof agreementOf>

/** The agreements of a site or of all sites that are not archived, with what is kept of their turns. */
export async function readAgreements(tx: Tx, companyId: string, siteId?: string): Promise<Agreement[]> {
  const where = { companyId, siteId, archivedAt: null, site: { archivedAt: null } }
  return (await tx.agreement.findMany({ where, include: PARTS, orderBy: { id: 'asc' } })).map(agreementOf)
}

/** Hours of one person, a month, that visits for turns took since a day. */
export async function readTurnHours(tx: Tx, companyId: string, since: string): Promise<number> {
  const [row] = await tx.$queryRaw<{ hours: number }[]>`
    select coalesce(sum(extract(epoch from v.ends_at - v.starts_at) * j.crew_size) / 3600, 0)::float8 as hours
    from agreement_turn t join job j on j.company_id = t.company_id and j.id = t.job_id
      join visit v on v.company_id = j.company_id and v.job_id = j.id and v.state = 'closed'
    where t.company_id = ${companyId}::uuid and v.starts_at >= ${dateOf(since)}`
  return (row?.hours ?? 0) / 12
}

/** How many rebeds the newest plan gives to each month, 'YYYY-MM'. */
export async function readPlannedRebeds(tx: Tx, companyId: string): Promise<Map<string, number>> {
  const newest = await tx.forecastPlan.findFirst({
    where: { companyId },
    orderBy: [{ finishedAt: 'desc' }, { id: 'desc' }],
    select: { id: true },
  })
  if (!newest) return new Map()
  const months = await tx.plannedRebed.groupBy({ by: ['month'], where: { companyId, planId: newest.id }, _count: true })
  return new Map(months.map((one) => [dayOf(one.month).slice(0, 7), one._count]))
}
