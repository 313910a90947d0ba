import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'

/** What a job follows: at least so many days after it; `day` of the other's last visit, null while it has none. */
export type Turn = { jobId: string; kind: string; leastDays: number; day: string | null }

type Following = { id: string; afterJobId: string | null; afterLeastDays: number | null }

/** Of each job that follows another, what and when. Visits called off and times only offered do not count. */
export async function readTurns(tx: Tx, companyId: string, jobs: readonly Following[]): Promise<Map<string, Turn>> {
  const wanted = jobs.flatMap((job) => job.afterJobId ?? [])
  if (wanted.length === 0) return new Map()
  const before = await tx.job.findMany({
    where: { companyId, id: { in: wanted } },
    select: {
      ...{ id: true, kind: true, state: true, closedDay: true },
      visits: {
        where: { state: { notIn: ['called-off', 'offered'] } },
        select: { crewDay: { select: { day: true } } },
        orderBy: { startsAt: 'desc' },
        take: 1,
      },
    },
  })
  const found = new Map(before.map((job) => [job.id, job]))
  return new Map(
    jobs.flatMap(({ id, afterJobId, afterLeastDays }) => {
      const job = afterJobId ? found.get(afterJobId) : undefined
      // What was called off holds nothing up.
      if (!job || job.state === 'called-off') return []
      const day = dayOf(job.closedDay) ?? dayOf(job.visits[0]?.crewDay.day ?? null)
      return [[id, { jobId: job.id, kind: job.kind, leastDays: afterLeastDays ?? 0, day }] as const]
    }),
  )
}
