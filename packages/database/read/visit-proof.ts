import type { VisitProof } from '@almanac/contract/pictures'
import type { JobKind } from '@almanac/records/job-kind'
import { type PhotographKind, photographKinds } from '@almanac/records/picture-kind'
import type { Signing } from '@almanac/records/signing'
import type { VisitOutcome } from '@almanac/records/visit-outcome'
import type { VisitState } from '@almanac/records/visit-state'
import { notFound } from '@almanac/runtime/errors'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'
import { inCompany, type Scope } from '../in-company.ts'

/** The pictures of a visit and what was said of signing, as everything that shows them reads them. */
export const PROOF_PARTS = {
  pictures: { where: { state: { in: ['coming', 'stored'] } }, orderBy: [{ takenAt: 'asc' }, { id: 'asc' }] },
  signatures: { orderBy: [{ at: 'desc' }, { id: 'desc' }], take: 1, include: { picture: { select: { state: true } } } },
} satisfies Prisma.VisitInclude

type WithProof = Prisma.VisitGetPayload<{ include: typeof PROOF_PARTS }>

/** The photographs that are here, in the order of their kinds and then as they were taken, how many are on their way, and the newest word on signing. */
export function proofOf({ pictures, signatures }: WithProof): Pick<VisitProof, 'photographs' | 'coming' | 'signature'> {
  const [signed] = signatures
  return {
    photographs: photographKinds.flatMap((kind) =>
      pictures
        .filter((one) => one.state === 'stored' && one.kind === kind)
        .map(({ id, takenAt, width, height }) => ({
          ...{ id, kind: kind as PhotographKind, takenAt: takenAt.toISOString(), width: width ?? 0, height: height ?? 0 },
        })),
    ),
    coming: pictures.filter((one) => one.state === 'coming').length,
    signature: signed
      ? {
          answer: signed.answer as Signing,
          name: signed.name,
          at: signed.at.toISOString(),
          pictureId: signed.picture?.state === 'stored' ? signed.pictureId : null,
        }
      : null,
  }
}

/** Visits that were closed, or have something to show, the latest first. */
async function proofs(tx: Tx, where: Prisma.VisitWhereInput): Promise<VisitProof[]> {
  const visits = await tx.visit.findMany({
    where: { AND: [where, { OR: [{ state: 'closed' }, { pictures: { some: {} } }, { signatures: { some: {} } }] }] },
    include: { ...PROOF_PARTS, crewDay: { select: { day: true } }, job: { select: { id: true, kind: true } } },
    orderBy: [{ startsAt: 'desc' }, { id: 'desc' }],
    take: 50,
  })
  return visits.map((visit) => ({
    visitId: visit.id,
    jobId: visit.job.id,
    day: dayOf(visit.crewDay.day),
    kind: visit.job.kind as JobKind,
    state: visit.state as VisitState,
    outcome: visit.outcome as VisitOutcome | null,
    ...proofOf(visit),
  }))
}

/** What the visits of a job have to show. */
export const readJobProof = (scope: Pick<Scope, 'companyId'>, jobId: string): Promise<VisitProof[]> =>
  inCompany(scope, async (tx) => {
    const { companyId } = scope
    if (!(await tx.job.findFirst({ where: { companyId, id: jobId }, select: { id: true } }))) throw notFound('job')
    return proofs(tx, { companyId, jobId })
  })

/** What the visits to a bed have to show: those that were for it, and those that put it in or took it out. */
export const readBedProof = (scope: Pick<Scope, 'companyId'>, bedId: string): Promise<VisitProof[]> =>
  inCompany(scope, async (tx) => {
    const { companyId } = scope
    if (!(await tx.bed.findFirst({ where: { companyId, id: bedId }, select: { id: true } }))) throw notFound('bed')
    return proofs(tx, {
      companyId,
      OR: [{ job: { bedId } }, { bedsBegan: { some: { id: bedId } } }, { bedsEnded: { some: { id: bedId } } }],
    })
  })
