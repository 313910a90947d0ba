import type { Desk } from '@almanac/contract/desk'
import type { DueMonths } from '@almanac/contract/due'
import { useDisplay } from '@almanac/ui/display'
import { Why } from '@almanac/ui/why'
import { formatDay } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'

/** The work of twelve months as one sum: what will fail and what has failed unseen, in rebeds and in hours. Each number stands once. */
export function DeskSum({ desk, picture }: { desk: Desk; picture: DueMonths }) {
  const display = useDisplay()
  const { year, unseen, hoursEach, asOfDay } = desk
  if (!year || !asOfDay) return <p>No forecast yet. It’s made automatically soon after you add or import softeners.</p>
  // In whole beds before they are added, so that the sum on the page is the sum of what it names.
  const [fail, failed] = [Math.round(year.mean), Math.round(unseen)]
  const whole = (value: number) => showWhole(value, display)
  const have = desk.months.reduce((sum, one) => sum + one.crewHours, 0)
  const { fit } = picture
  const learned = fit && !fit.fellBackBecause
  return (
    <p>
      <strong>
        <Why
          explanation={{
            title: 'Rebeds of work in 12 months',
            summary: `Of ${whole(desk.beds)} beds in service about ${whole(fail)} will fail in the next 12 months, and about ${whole(failed)} have failed already without anybody noticing.`,
            inputs: [
              { name: 'Beds', value: whole(desk.beds), from: 'in service, not archived' },
              { name: 'As of', value: formatDay(asOfDay, display), from: 'the last forecast run' },
              {
                name: 'To fail',
                value: `${whole(year.low)} to ${whole(year.high)}, middle ${whole(fail)}`,
                from: 'the forecast, likely range (80%)',
              },
              {
                name: 'Failed unseen',
                value: whole(failed),
                from: 'sum of the beds’ chances, without those whose rebed is proposed or booked',
              },
              { name: 'Learned from', value: learned ? fit.version : 'industry rules of thumb', from: 'last night’s update' },
            ],
            formula:
              'Each bed has its own chance of failing in each month, given that it worked when last seen. For one set of life parameters the count of failures is an exact Poisson-binomial; the likely range mixes it over 24 sets that stand for the doubt about the parameters, which all beds share.',
            assumptions: [
              'A bed that fails is counted once, in the month it fails; its new bed is not counted again.',
              'Water stays as last recorded.',
              learned
                ? `How long beds last comes from ${whole(fit.failures)} failures among ${whole(fit.records)} of your own beds, starting from industry rules of thumb.`
                : 'How long beds last comes from industry rules of thumb, with a wide range, until enough of your own beds have failed on record.',
              'A bed that has probably failed already won’t fail again, so it’s left out of the coming months.',
            ],
            source:
              'Method: exact Poisson-binomial. Parameters: common practice and UFC 3-240-13FN (2005), see docs/decisions/forecast-priors.md.',
          }}
        >
          {whole(fail + failed)} rebeds of work
        </Why>{' '}
        in the next 12 months.
      </strong>{' '}
      {whole(fail)} beds will fail, most likely {whole(year.low)} to {whole(year.high)}; {whole(failed)} have failed unseen. That takes{' '}
      {whole((fail + failed) * hoursEach)} hours of a two-person crew; you have {whole(have)}.
    </p>
  )
}
