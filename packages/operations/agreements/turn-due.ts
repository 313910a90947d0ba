import { dayOf } from '@almanac/database/days'
import type { AgreementEnd } from '@almanac/records/agreement'
import { turnDays } from '@almanac/service-rules/agreements/agreement-turns'

type Stored = {
  rule: string
  firstDay: Date
  countsFrom: Date
  endedDay: Date | null
  endWhy: string | null
  terms: { untilDay: Date | null }[]
}

/** Whether a stored agreement, with its newest price line, has a turn due on a day. */
export function hasTurnOn({ terms, ...stored }: Stored, day: string): boolean {
  const facts = {
    ...{ rule: stored.rule, firstDay: dayOf(stored.firstDay), countsFrom: dayOf(stored.countsFrom) },
    ...{ untilDay: dayOf(terms[0]?.untilDay ?? null), endedDay: dayOf(stored.endedDay), endWhy: stored.endWhy as AgreementEnd | null },
  }
  return turnDays(facts, day).at(-1) === day
}
