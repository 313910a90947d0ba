import type { PlanPage } from '@almanac/contract/plans'
import { notFound } from '@almanac/runtime/errors'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { readFormedCrews, type StoredCrews } from './plan-crews.ts'

type Totals = NonNullable<PlanPage['before']>
type Stored = {
  /** Of who goes with whom: everyone alone. */
  alone?: Totals
  before: Totals
  after: Totals
  sentences: string[]
  differences: {
    id: string
    kind: PlanPage['differences'][number]['kind']
    toSheetId: string | null
    fromSheetId: string | null
    sentence: string
  }[]
  waiting: { jobId: string; why: string }[]
  notes: string[]
  taken?: number
}

const TOKEN = /«([0-9a-f-]{36})»/g

/** The names that stand in a stored plan by id: sites and crews as they are called today. */
async function namesIn(tx: Tx, companyId: string, text: string): Promise<Map<string, string>> {
  const ids = [...new Set([...text.matchAll(TOKEN)].map((match) => match[1] ?? ''))]
  const sites = await tx.site.findMany({ where: { companyId, id: { in: ids } }, select: { id: true, label: true } })
  const crews = await tx.crewDay.findMany({ where: { companyId, id: { in: ids } }, select: { id: true, name: true } })
  return new Map([...sites.map((one) => [one.id, one.label] as const), ...crews.map((one) => [one.id, one.name] as const)])
}

/** A plan with what it changes, or how far it is. */
export async function readPlan(scope: Pick<Scope, 'companyId'>, planId: string): Promise<PlanPage> {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const plan = await tx.planProposal.findUnique({ where: { companyId_id: { companyId, id: planId } } })
    if (!plan) throw notFound('plan')
    const stored = plan.proposal as Stored | null
    const sheets = ((plan.board ?? { sheets: [] }) as { sheets: { id: string; date: string; label: string }[] }).sheets
    const names = await namesIn(tx, companyId, JSON.stringify([stored ?? plan.failure, sheets.map((sheet) => sheet.label)]))
    const named = (text: string) => text.replace(TOKEN, (_, id: string) => names.get(id) ?? 'a site that is gone')
    const sheetOf = new Map(sheets.map((sheet) => [sheet.id, sheet]))
    const totals = (one: Totals | undefined): Totals | null => {
      if (!one) return null
      const { driveMinutes, miles, overtimeMinutes, lateDays, planned, waiting, lateEnds } = one
      // Plans of before it was counted have none.
      return { driveMinutes, miles, overtimeMinutes, lateDays, planned, waiting, lateEnds: lateEnds ?? null }
    }
    return {
      ...{ id: plan.id, version: plan.version, asked: plan.asked as PlanPage['asked'], state: plan.state as PlanPage['state'] },
      ...{ fromDay: dayOf(plan.fromDay), untilDay: dayOf(plan.untilDay), createdAt: plan.createdAt.toISOString() },
      failure: plan.failure === null ? null : named(plan.failure),
      before: totals(stored?.before ?? stored?.alone),
      after: totals(stored?.after),
      sentences: (stored?.sentences ?? []).map(named),
      crews: stored && plan.kind === 'crews' ? await readFormedCrews(tx, companyId, stored as unknown as StoredCrews) : null,
      differences: (stored?.differences ?? []).map(({ id, kind, toSheetId, fromSheetId, sentence }) => {
        const crewDayId = toSheetId ?? fromSheetId
        const sheet = sheetOf.get(crewDayId ?? '')
        const crew = named(sheet?.label ?? '')
        return { id, kind, crewDayId, crew, sentence: named(sentence), day: sheet?.date ?? dayOf(plan.fromDay) }
      }),
      taken: stored?.taken ?? 0,
      waiting: (stored?.waiting ?? []).map(({ jobId, why }) => ({ jobId, why: named(why) })),
      notes: (stored?.notes ?? []).map(named),
    }
  })
}
