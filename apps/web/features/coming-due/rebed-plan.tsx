'use client'
import type { RebedPlan } from '@almanac/contract/forecasts'
import { useDisplay } from '@almanac/ui/display'
import { LevelPlot } from '@almanac/ui/level-plot'
import { Notice } from '@almanac/ui/notice'
import { Section } from '@almanac/ui/section'
import { Why } from '@almanac/ui/why'
import { formatDay } from '@almanac/units/format-day'
import { formatPercent, type NumberDisplay, showWhole, withUnit } from '@almanac/units/format-number'
import { lbToKg } from '@almanac/units/mass'
import { ft3ToL } from '@almanac/units/volume'
import { useSession } from '@/client/providers'

/** How near to the best the solver has proven the plan. */
const gapWords = (gap: number | null, display: NumberDisplay) =>
  gap === null
    ? ''
    : `; it’s proven that no plan within these hours has over ${formatPercent(Math.max(gap, 0.001), display, 1)} fewer failures`

/** Rebeds by month against crew capacity, with the materials and hours that follow. */
export function RebedPlanPart({ plan }: { plan: RebedPlan }) {
  const display = useDisplay()
  const { me } = useSession()
  const metric = me.company.unitSystem === 'metric'
  const total = plan.months.reduce((sum, one) => sum + one.rebeds, 0)
  const each = plan.months.length > 0 ? total / plan.months.length : 0
  const over = plan.months.filter((one) => one.overtimeHours >= plan.hoursEach / 2)
  const limit = formatPercent(plan.riskLimit, display)
  return (
    <Section title="Rebeds by month">
      {plan.refusal ? <Notice kind="mind">{plan.refusal}</Notice> : null}
      {plan.months.length > 0 ? (
        <>
          <p className="max-w-[75ch]">
            To keep every bed’s chance of having failed under {limit},{' '}
            <Why
              explanation={{
                title: 'Rebeds by month',
                summary: `${total} beds reach your limit within ${plan.months.length} months. Each gets a month before it does, but not while 9 of 10 beds like it still work.`,
                inputs: [
                  { name: 'Highest risk you accept', value: limit, from: 'Company settings' },
                  { name: 'Crews can do', value: `${plan.rebedsPerMonth} rebeds a month`, from: 'shifts and days off, less other work' },
                  {
                    name: 'A usual rebed',
                    value: withUnit(plan.hoursEach, 1, 'crew hours', display),
                    from: 'by the tank’s diameter, two people',
                  },
                  { name: 'As of', value: formatDay(plan.asOfDay, display), from: 'the last forecast run' },
                ],
                formula: `First the least overtime that keeps the limit, spread evenly; then, within those hours, the months with the fewest failures while waiting. Both are solved by HiGHS, a solver for linear and mixed-integer programs${gapWords(plan.gap, display)}.`,
                assumptions: [
                  'Beds already past the limit are left out: call those customers first.',
                  'Beds that reach the limit after these months are not in the plan, so its last months look emptier than they will be.',
                  'A bed with no recorded volume counts as the average of the others.',
                ],
              }}
            >
              plan about {showWhole(each, display)} rebeds a month
            </Why>{' '}
            for {plan.months.length} months.{' '}
            {over.length > 0
              ? `Your crews can do ${plan.rebedsPerMonth}: in ${over.length} of these months they’d need more hours than they have. A higher limit or more hours closes the gap.`
              : `Your crews can do ${plan.rebedsPerMonth}, so the hours are enough.`}
            {plan.pastLimit > 0
              ? ` For ${plan.pastLimit} beds the chance of having failed already is above ${limit}. They’re not in the plan. Call those customers.`
              : ''}
          </p>
          {plan.current ? null : <p className="text-small text-soft">This plan is from an earlier forecast; the new one is on its way.</p>}
          <LevelPlot
            title="Rebeds planned, by month"
            months={plan.months.map((one) => ({
              ...one,
              resin: metric ? ft3ToL(one.resinFt3) : one.resinFt3,
              gravel: metric ? lbToKg(one.gravelLb) : one.gravelLb,
            }))}
            capacity={plan.rebedsPerMonth}
            units={metric ? { resin: 'L', gravel: 'kg' } : { resin: 'ft³', gravel: 'lb' }}
          />
        </>
      ) : null}
    </Section>
  )
}
