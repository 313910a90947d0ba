import type { DueMonths } from '@almanac/contract/due'
import { useDisplay } from '@almanac/ui/display'
import { Why } from '@almanac/ui/why'
import { showWhole } from '@almanac/units/format-number'

/** The picture in two sentences; the figures can be asked why. */
export function DueLead({ picture }: { picture: DueMonths }) {
  const display = useDisplay()
  const { year, beds, asOfDay, rebedsPerMonth, fit, probablyFailed } = picture
  const learned = fit && !fit.fellBackBecause
  if (!year || !asOfDay) return <>No forecast has been made yet. It is made by itself soon after softeners are added or imported.</>
  return (
    <>
      {showWhole(beds, display)} beds watched. In the next 12 months expect{' '}
      <Why
        explanation={{
          title: 'Beds expected to fail in 12 months',
          summary: `${showWhole(year.mean, display)} expected; between ${showWhole(year.low, display)} and ${showWhole(year.high, display)} in four years out of five.`,
          inputs: [
            { name: 'Beds watched', value: showWhole(beds, display), from: 'beds in service, not archived' },
            { name: 'As of', value: asOfDay, from: 'the last forecast run' },
            { name: 'Learned from', value: learned ? fit.version : 'industry rules of thumb', from: 'the fit of the last night' },
            { name: 'Crews can do', value: `${rebedsPerMonth} rebeds a month`, from: 'company settings' },
          ],
          formula:
            'Each bed has its own chance of failing in each month, given that it worked when last seen. For one set of life parameters the count of failures is an exact Poisson-binomial; the band mixes it over 24 sets that stand for the doubt about the parameters, which all beds share.',
          assumptions: [
            'A bed that fails is counted once, in the month it fails; its new bed is not counted again.',
            'Water stays as it was last known.',
            learned
              ? `How long beds last was learned from ${showWhole(fit.failures, display)} failures among ${showWhole(fit.records, display)} of your own beds, starting from what the trade says.`
              : 'How long beds last goes by the trade’s own rules of thumb, kept wide, until enough of your own beds have failed on record.',
            'A bed that has probably failed already is not expected to fail again: it is left out of the months to come.',
          ],
          source:
            'Method: exact Poisson-binomial. Parameters: common practice and UFC 3-240-13FN (2005), see docs/decisions/forecast-priors.md.',
        }}
      >
        {showWhole(year.mean, display)} to fail
      </Why>
      , between {showWhole(year.low, display)} and {showWhole(year.high, display)} four times out of five. Your crews can do{' '}
      {rebedsPerMonth} rebeds a month.
      {probablyFailed > 0 ? ` ${showWhole(probablyFailed, display)} more have probably failed already, unseen: ring and ask.` : ''}
    </>
  )
}
