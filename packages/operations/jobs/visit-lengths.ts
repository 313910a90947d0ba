import type { Tx } from '@almanac/database/client'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { readJob } from '@almanac/database/read/job-page'
import { readVisitLengths } from '@almanac/database/read/visit-lengths'
import type { JobKind } from '@almanac/records/job-kind'
import { now } from '@almanac/runtime/clock'
import { learnDurations } from '@almanac/service-rules/jobs/learn-durations'

/** How long this firm's visits take, learnt from its own close-outs; `kind`: visits of this kind only. */
export async function visitLengths(tx: Tx, companyId: string, at: Date, kind?: JobKind) {
  const lengths = await readVisitLengths(tx, companyId, at, kind)
  return learnDurations(lengths.map((one) => ({ ...one, kind: one.kind as JobKind })))
}

/** A job as its page shows it, with how long such visits take. */
export async function jobWithLength(
  scope: Pick<Scope, 'companyId'>,
  jobId: string,
  nameOf: (personId: string) => string | null = () => null,
) {
  const job = await readJob(scope, jobId, nameOf)
  const learnt = await inCompany(scope, (tx) => visitLengths(tx, scope.companyId, now(), job.kind))
  return { ...job, usually: learnt(job.kind, job.bed?.diameterIn ?? null) }
}
