import type { JobKind } from '@almanac/records/job-kind'
import type { JobState } from '@almanac/records/job-state'
import { AppError } from '@almanac/runtime/errors'
import { dateOf, dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { JOB_PARTS, jobFacts } from './job-rows.ts'

export type JobListQuery = { state: JobState; kind?: JobKind; town?: string; limit: number; cursor?: string }

type Key = { due: string | null; id: string }

const toCursor = (key: Key) => Buffer.from(JSON.stringify(key)).toString('base64url')

function fromCursor(cursor: string): Key {
  try {
    const key = JSON.parse(Buffer.from(cursor, 'base64url').toString()) as Key
    if (typeof key.id === 'string' && (key.due === null || /^\d{4}-\d{2}-\d{2}$/.test(key.due))) return key
  } catch {
    // Falls through to the sentence below.
  }
  throw new AppError('invalid', 'The place in this list could not be read. Start again from its first page.')
}

/** Rows after the key, in the order below: those without a due date stand last, whichever way the others go. */
function after(key: Key, newestFirst: boolean): Prisma.JobWhereInput {
  if (key.due === null) return { dueLatest: null, id: { gt: key.id } }
  const due = dateOf(key.due)
  return { OR: [{ dueLatest: newestFirst ? { lt: due } : { gt: due } }, { dueLatest: due, id: { gt: key.id } }, { dueLatest: null }] }
}

/** Jobs in one state by due date, the most pressing first; closed and called-off ones the latest first. Paged by key. */
export async function readJobs(scope: Pick<Scope, 'companyId'>, query: JobListQuery) {
  const newestFirst = query.state === 'closed' || query.state === 'called-off'
  const key = query.cursor ? fromCursor(query.cursor) : null
  return inCompany(scope, async (tx) => {
    const found = await tx.job.findMany({
      where: {
        companyId: scope.companyId,
        state: query.state,
        kind: query.kind,
        site: query.town === undefined ? undefined : { town: query.town },
        ...(key ? after(key, newestFirst) : {}),
      },
      include: {
        ...JOB_PARTS,
        visits: {
          where: { state: { in: ['booked', 'under-way'] } },
          orderBy: { startsAt: 'asc' },
          take: 1,
          include: { crewDay: { select: { name: true, day: true } } },
        },
      },
      orderBy: [{ dueLatest: { sort: newestFirst ? 'desc' : 'asc', nulls: 'last' } }, { id: 'asc' }],
      take: query.limit + 1,
    })
    const rows = found.slice(0, query.limit)
    const last = rows.at(-1)
    const more = found.length > query.limit && last
    return {
      rows: rows.map((job) => {
        const next = job.visits[0]
        return {
          ...jobFacts(job),
          chance3Months: job.bed?.forecast?.chance3Months ?? null,
          nextVisit: next ? { startsAt: next.startsAt.toISOString(), day: dayOf(next.crewDay.day), crewName: next.crewDay.name } : null,
        }
      }),
      nextCursor: more ? toCursor({ due: dayOf(last.dueLatest), id: last.id }) : null,
    }
  })
}

/** How many jobs stand in each state, and the towns of the company's sites. */
export async function readJobsOverview(scope: Pick<Scope, 'companyId'>) {
  return inCompany(scope, async (tx) => {
    const { companyId } = scope
    const states = await tx.job.groupBy({ by: ['state'], where: { companyId }, _count: { _all: true } })
    const towns = await tx.site.findMany({
      where: { companyId, archivedAt: null, town: { not: null } },
      distinct: ['town'],
      select: { town: true },
      orderBy: { town: 'asc' },
    })
    const counts = { proposed: 0, booked: 0, 'under-way': 0, held: 0, closed: 0, 'called-off': 0 }
    for (const one of states) counts[one.state as JobState] = one._count._all
    return { counts, towns: towns.flatMap((one) => (one.town ? [one.town] : [])) }
  })
}
