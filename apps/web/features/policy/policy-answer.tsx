'use client'
import type { Policy } from '@almanac/contract/forecasts'
import { CostCurve } from '@almanac/ui/cost-curve'
import { useDisplay } from '@almanac/ui/display'
import { FigureTable } from '@almanac/ui/figure-table'
import { Why } from '@almanac/ui/why'
import { formatPercent, type NumberDisplay, showNumber, showWhole } from '@almanac/units/format-number'

type Props = { policy: Policy; fixedAge: number; money: (minor: number) => string }
type Answer = Extract<Policy['answer'], { ok: true }>

const years = (value: number, display: NumberDisplay) =>
  showNumber(value, Math.abs(value - Math.round(value)) < 0.25 ? 0 : 1, display) ?? ''

/** What planning ahead saves against the other rules, for one bed and for all that are watched, with the doubt about how long beds last. */
function Savings({
  answer,
  bedsWatched,
  fixedAge,
  money,
}: {
  answer: Answer
  bedsWatched: number
  fixedAge: number
  money: Props['money']
}) {
  const display = useDisplay()
  const best = answer.best?.costPerYear ?? answer.runToFailurePerYear
  const saved = ({ mean, low, high }: Answer['savedAgainstFixedAge']) =>
    Math.abs(mean) < 1 ? '–' : `${money(mean * bedsWatched)} (${money(low * bedsWatched)} to ${money(high * bedsWatched)})`
  const rows = [
    { key: answer.best ? 'Rebed in the window' : 'Wait until it fails', cost: best, more: '' },
    ...(answer.best
      ? [{ key: 'Wait until it fails', cost: answer.runToFailurePerYear, more: saved(answer.savedAgainstRunToFailure) }]
      : []),
    { key: `Rebed every bed at ${fixedAge} years`, cost: answer.fixedAgePerYear, more: saved(answer.savedAgainstFixedAge) },
  ]
  return (
    <>
      <FigureTable
        className="max-w-3xl overflow-x-auto"
        caption="What each rule costs"
        heads={[
          'Rule',
          'Per bed per year',
          `A year, ${showWhole(bedsWatched, display)} beds`,
          answer.best ? 'The window saves a year' : 'Waiting saves a year',
        ]}
        rows={rows.map(({ key, cost, more }, i) => ({ key, strong: i === 0, cells: [key, money(cost), money(cost * bedsWatched), more] }))}
      />
      <p className="mt-2 max-w-[75ch] text-small text-soft">
        In brackets: the likely range (80%), since nobody knows exactly how long beds last. Below zero means another age would have been
        cheaper.
      </p>
    </>
  )
}

function lead(answer: Answer, money: Props['money'], display: NumberDisplay): string {
  const { best, window } = answer
  if (!best || !window)
    return 'With these costs it is cheapest to wait until a bed fails: a planned rebed saves too little to be worth good resin.'
  const to = window.toYears > 40 ? 'later' : `${years(window.toYears, display)} years`
  return `Rebed between ${years(window.fromYears, display)} and ${to} of age: about ${money(best.costPerYear)} per bed per year. Anywhere in that window costs within ${formatPercent(0.05, display)} of the cheapest.`
}

/** The answer first, then what it rests on: curve, doubt, what other rules would cost. */
export function PolicyAnswer({ policy, fixedAge, money }: Props) {
  const display = useDisplay()
  const { answer, fit } = policy
  if (!answer.ok) return <p>{answer.reason}</p>
  const learned = fit && !fit.fellBackBecause
  const doubt =
    answer.bestLow === null || answer.bestHigh === null
      ? 'Even with that doubt, waiting stays cheaper.'
      : `Nobody knows exactly how long beds last. The cheapest age is likely between ${years(answer.bestLow, display)} and ${years(answer.bestHigh, display)} years (80%)${
          answer.planShare < 0.95 ? `, and ${Math.round((1 - answer.planShare) * 100)} in 100 times it would be cheaper to wait` : ''
        }.`
  return (
    <>
      <p className="max-w-[75ch] text-lead font-semibold text-pretty">{lead(answer, money, display)}</p>
      <p className="mt-2 max-w-[75ch] text-pretty">
        {doubt} Half of new beds on this water last{' '}
        <Why
          explanation={{
            title: 'How long beds last on this water',
            summary: `Half of new beds last ${years(answer.medianLifeYears, display)} years here; the other half last longer.`,
            inputs: [
              { name: 'Water', value: policy.water, from: 'the supply as it is now' },
              {
                name: 'Learned from',
                value: learned ? `${fit.failures} failures among ${fit.records} of your beds (${fit.version})` : 'industry rules of thumb',
              },
            ],
            formula:
              'Yearly cost of rebedding at age T or at failure, whichever comes first: (planned × chance of reaching T + failure × chance of not) ÷ mean years in service. Age replacement after Barlow and Hunter (1960).',
            assumptions: [
              'A new bed is like the old one; the water stays as it is now.',
              'A failure costs its rebed and all that comes with it; beads in the plumbing are extra, in the share you gave.',
              'The doubt comes from 24 sets of life parameters that cover what the records leave open.',
            ],
          }}
        >
          {years(answer.medianLifeYears, display)} years
        </Why>
        .
      </p>
      <CostCurve
        title="Cost per bed per year, by age at rebed"
        points={answer.curve.map(({ ageYears, costPerYear, low, high }) => ({ ageYears, cost: costPerYear, low, high }))}
        window={answer.window}
        bestAge={answer.best?.ageYears ?? null}
        runToFailure={answer.runToFailurePerYear}
        money={money}
      />
      <Savings answer={answer} bedsWatched={policy.bedsWatched} fixedAge={fixedAge} money={money} />
    </>
  )
}
