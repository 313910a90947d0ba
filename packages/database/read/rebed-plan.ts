import type { RebedPlan } from '@almanac/contract/forecasts'
import { dayOf } from '../days.ts'
import { inCompany, type Scope } from '../in-company.ts'

/** The newest levelled plan, with whether it speaks of the run whose month picture is shown. */
export async function readRebedPlan(scope: Pick<Scope, 'companyId'>): Promise<RebedPlan | null> {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const plan = await tx.forecastPlan.findFirst({
      where: { companyId },
      orderBy: [{ finishedAt: 'desc' }, { id: 'desc' }],
      include: { run: { select: { asOfDay: true, fitId: true } } },
    })
    if (!plan) return null
    const shown = await tx.forecastMonth.findFirst({ where: { companyId }, select: { run: { select: { asOfDay: true, fitId: true } } } })
    const limits = plan.limits as {
      rebedsPerMonth?: number
      riskLimit?: number
      pastLimit?: number
      hoursEach?: number
      gap?: number | null
    }
    return {
      id: plan.id,
      asOfDay: dayOf(plan.run.asOfDay),
      finishedAt: plan.finishedAt.toISOString(),
      current: shown?.run.fitId === plan.run.fitId && dayOf(shown?.run.asOfDay ?? null) === dayOf(plan.run.asOfDay),
      rebedsPerMonth: limits.rebedsPerMonth ?? 0,
      riskLimit: limits.riskLimit ?? 0,
      pastLimit: limits.pastLimit ?? 0,
      hoursEach: limits.hoursEach ?? 0,
      gap: limits.gap ?? null,
      refusal: plan.refusal,
      months: (plan.months ?? []) as RebedPlan['months'],
    }
  })
}
