import { oneOf } from '@almanac/records/choices'
import type { GuideMeasure } from '@almanac/records/guide-measure'
import { type GuideState, guideEnds } from '@almanac/records/guide-state'
import type { OwnerVerdict } from '@almanac/records/owner-verdict'
import type { GuidePhotographKind } from '@almanac/records/picture-kind'
import { procedureSteps } from '@almanac/records/procedure-step'
import type { Prisma } from '../generated/client.ts'
import { inCompany, type Scope } from '../in-company.ts'

/** Whether an owner may rebed a bed alone, as it was decided; the last first. */
export async function readDecisions(scope: Pick<Scope, 'companyId'>, bedId: string, nameOf: (personId: string) => string | null) {
  return inCompany(scope, async (tx) => {
    const found = await tx.ownerDecision.findMany({
      where: { companyId: scope.companyId, bedId },
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      take: SHOWN,
    })
    return found.map(({ id, at, personId, verdict, reasons, law }) => ({
      ...{ id, at: at.toISOString(), by: nameOf(personId), reasons, law },
      verdict: verdict as OwnerVerdict,
    }))
  })
}

/** How many links of a site are shown; older ones stay on record. */
const SHOWN = 5

const PARTS = {
  softener: {
    select: {
      label: true,
      tanks: {
        select: {
          beds: {
            where: { endedLatest: null, archivedAt: null },
            select: { id: true, decisions: { orderBy: [{ at: 'desc' }, { id: 'desc' }], take: 1, select: { verdict: true } } },
          },
        },
      },
    },
  },
  entries: { orderBy: { at: 'asc' } },
  pictures: { where: { state: 'stored' }, orderBy: [{ takenAt: 'desc' }, { id: 'desc' }] },
} satisfies Prisma.OwnerGuideInclude

type WithParts = Prisma.OwnerGuideGetPayload<{ include: typeof PARTS }>

/** The beds that an owner may rebed alone, while the steps were not sent. */
const goBeds = ({ state, softener }: WithParts): string[] =>
  state === 'measuring'
    ? softener.tanks
        .flatMap((tank) => tank.beds)
        .filter((bed) => bed.decisions[0]?.verdict === 'owner-with-helper')
        .map((bed) => bed.id)
    : []

/** The links by which owners measured at a site, the latest first. Whether one still works is for the reader to say. */
export async function readGuides(scope: Pick<Scope, 'companyId'>, siteId: string) {
  return inCompany(scope, async (tx) => {
    const found = await tx.ownerGuide.findMany({
      where: { companyId: scope.companyId, softener: { siteId, archivedAt: null } },
      include: PARTS,
      orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
      take: SHOWN,
    })
    return found.map((one) => ({
      ...{ id: one.id, version: one.version, softenerLabel: one.softener.label },
      ...{ createdAt: one.createdAt.toISOString(), linkUntil: one.linkUntil.toISOString(), withdrawn: one.withdrawnAt !== null },
      entries: one.entries.map((entry) => ({
        measure: entry.measure as GuideMeasure,
        valueIn: entry.valueIn,
        at: entry.at.toISOString(),
      })),
      photographs: one.pictures.map(({ id, kind, takenAt }) => ({ id, kind: kind as GuidePhotographKind, at: takenAt.toISOString() })),
      ...{ state: one.state as GuideState, step: oneOf(procedureSteps, one.step), toFix: one.toFix, jobId: one.jobId },
      ...{ ended: oneOf(guideEnds, one.ended), goBeds: goBeds(one) },
    }))
  })
}
