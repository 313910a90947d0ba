import type { DueMonths } from '@almanac/contract/due'
import { useDisplay } from '@almanac/ui/display'
import { Why } from '@almanac/ui/why'
import { formatDay } from '@almanac/units/format-day'
import { formatPercent, showWhole } from '@almanac/units/format-number'

/** The picture in two sentences; the figures can be asked why. */
export function DueLead({ picture }: { picture: DueMonths }) {
  const display = useDisplay()
  const { year, beds, asOfDay, rebedsPerMonth, fit, failedAlready, widenedBy } = picture
  const learned = fit && !fit.fellBackBecause
  if (!year || !asOfDay) return <>No forecast yet. It’s made automatically soon after you add or import softeners.</>
  return (
    <>
      {showWhole(beds, display)} beds in service. In the next 12 months expect about{' '}
      <Why
        explanation={{
          title: 'Beds expected to fail in 12 months',
          summary: `Of ${showWhole(beds, display)} beds, about ${showWhole(year.mean, display)} will fail in the next 12 months; in 8 years of 10 it would be ${showWhole(year.low, display)} to ${showWhole(year.high, display)}.`,
          inputs: [
            { name: 'Beds', value: showWhole(beds, display), from: 'beds in service, not archived' },
            { name: 'As of', value: formatDay(asOfDay, display), from: 'the last forecast run' },
            { name: 'Learned from', value: learned ? fit.version : 'industry rules of thumb', from: 'last night’s update' },
            { name: 'Crews can do', value: `${rebedsPerMonth} rebeds a month`, from: 'company settings' },
          ],
          formula:
            'Each bed has its own chance of failing in each month, given that it worked when last seen. For one set of life parameters the count of failures is an exact Poisson-binomial; the likely range mixes it over 24 sets that stand for the doubt about the parameters, which all beds share.',
          assumptions: [
            'A bed that fails is counted once, in the month it fails; its new bed is not counted again.',
            'Water stays as last recorded.',
            learned
              ? `How long beds last comes from ${showWhole(fit.failures, display)} failures among ${showWhole(fit.records, display)} of your own beds, starting from industry rules of thumb.`
              : 'How long beds last comes from industry rules of thumb, with a wide range, until enough of your own beds have failed on record.',
            'A bed that has probably failed already won’t fail again, so it’s left out of the coming months.',
          ],
          source:
            'Method: exact Poisson-binomial. Parameters: common practice and UFC 3-240-13FN (2005), see docs/decisions/forecast-priors.md.',
        }}
      >
        {showWhole(year.mean, display)} to fail
      </Why>
      ; likely range {showWhole(year.low, display)}–{showWhole(year.high, display)} ({formatPercent(0.8, display)}).
      {widenedBy > 1 ? ' Past years fell outside too often, so we widened it.' : ''} Your crews can do {rebedsPerMonth} rebeds a month.
      {failedAlready >= 0.5 ? ` About ${showWhole(failedAlready, display)} more have probably failed already. Call those customers.` : ''}
    </>
  )
}
