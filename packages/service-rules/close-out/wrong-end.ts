import type { VisitOutcome } from '@almanac/records/visit-outcome'
import type { AmountDisplay } from '@almanac/units/display'
import { formatList } from '@almanac/units/format-list'
import type { CloseOutRecord } from './close-out-form.ts'
import type { CloseOutWords } from './close-out-words.ts'
import { textsOfChecks } from './record-from-answers.ts'
import { outcomesAfter, outcomesOfKind, stopsAmong } from './safe-ending.ts'

type Context = CloseOutWords & { display: AmountDisplay }

/** The sentence that says why a visit cannot end so: its kind does not, or an answer stands that ended the work; null where it can. */
export function wrongEnd(outcome: VisitOutcome, record: CloseOutRecord, { words, outcomes, stops, display }: Context): string | null {
  const { jobKind } = record
  const named = (those: readonly VisitOutcome[]) =>
    formatList(
      those.map((one) => words('named', { outcome: outcomes(one) })),
      display,
      'disjunction',
    )
  if (!outcomesOfKind[jobKind].includes(outcome))
    return words('notOfKind', { outcome: outcomes(outcome), fits: named(outcomesOfKind[jobKind]) })
  const answers = textsOfChecks(record.checks)
  const fits = outcomesAfter(jobKind, answers)
  const [stop] = stopsAmong(answers)
  if (!stop || fits.includes(outcome)) return null
  return words('stopped', { what: stops(`what/${stop}`), outcome: outcomes(outcome), fits: named(fits) })
}
