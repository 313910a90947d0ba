import type { Rounds, RoundTurn } from '@almanac/contract/agreements'
import type { Tx } from '@almanac/database/client'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { type Agreement, readAgreements, readPlannedRebeds, readTurnHours } from '@almanac/database/read/agreements'
import { readVisitLengths } from '@almanac/database/read/visit-lengths'
import { jobOfAgreement } from '@almanac/records/agreement'
import type { JobKind } from '@almanac/records/job-kind'
import { now } from '@almanac/runtime/clock'
import { isLate, lastDayOf, lastOfMonth, leewayOf, monthOf, standingOf, turnDays } from '@almanac/service-rules/agreements/agreement-turns'
import { spreadTurns } from '@almanac/service-rules/agreements/spread-turns'
import { everyOf } from '@almanac/service-rules/agreements/turn-rule'
import { jobKindFacts } from '@almanac/service-rules/jobs/job-kinds'
import { learnDurations } from '@almanac/service-rules/jobs/learn-durations'
import { addDays, dayNumber } from '@almanac/units/calendar/calendar-day'
import { addMonths, isoDay } from '@almanac/units/calendar/day-number'
import { companyFacts } from '../shared/company-facts.ts'
import { agreementLine } from './of-site.ts'

const MONTHS_AHEAD = 12
/** How long before its end an agreement is on the list, and how long after it. Common practice, no source. */
const ENDS_SOON_DAYS = 60
const ENDED_LATELY_DAYS = 90

/** Hours of a crew of two that are left for rebeds by month, and what one takes: of the forecasts' own room, handed in. */
export type CapacityOf = (
  tx: Tx,
  companyId: string,
  today: string,
  timeZone: string,
  count: number,
) => Promise<{ hoursEach: number; months: { month: string; crewHours: number; bookedHours: number }[] }>

/** Hours of one person left for rounds by month: what rebeds leave, booked or planned; rounds of the past year are no other work here. */
async function freeHours(tx: Tx, companyId: string, today: string, timeZone: string, capacityOf: CapacityOf) {
  const { hoursEach, months } = await capacityOf(tx, companyId, today, timeZone, MONTHS_AHEAD)
  const planned = await readPlannedRebeds(tx, companyId)
  const usual = await readTurnHours(tx, companyId, isoDay(addMonths(dayNumber(today), -12)))
  return new Map(
    months.map(({ month, crewHours, bookedHours }, later) => {
      const rebeds = Math.max(bookedHours, (planned.get(month) ?? 0) * hoursEach)
      return [month, Math.max(0, 2 * (crewHours - rebeds)) + (later === 0 ? 0 : usual)]
    }),
  )
}

/** How long a turn of each kind takes, in hours of one person, by this company's own visits. */
async function hoursOfTurn(tx: Tx, companyId: string): Promise<(kind: Agreement['kind']) => number> {
  const lengths = await readVisitLengths(tx, companyId, now())
  const lengthOf = learnDurations(lengths.map((one) => ({ ...one, kind: one.kind as JobKind })))
  return (kind) => (lengthOf(jobOfAgreement[kind], null).middle * jobKindFacts[jobOfAgreement[kind]].usualCrew) / 60
}

type Turn = Omit<RoundTurn, 'fits'> & { month: string; months: string[]; late: boolean }

/** Every turn of an agreement up to a day that is not settled, and the done ones. */
function turnsOf(one: Agreement, today: string, until: string, hours: number): Turn[] {
  const leeway = leewayOf(one.kind, one.rule)
  const { id: agreementId, siteId, siteLabel, town, customerName, kind, softenerLabel } = one
  return turnDays(one, until).map((dueDay) => {
    const kept = one.turns.get(dueDay)
    const standing = standingOf(kept)
    const months = Array.from({ length: 2 * leeway + 1 }, (_, i) => monthOf(dueDay, i - leeway)).filter((month) => month >= monthOf(today))
    return {
      ...{ agreementId, siteId, siteLabel, town, customerName, kind, every: everyOf(one.rule), softenerLabel },
      ...{ dueDay, version: kept?.version ?? 0, standing, job: standing === 'open' ? null : (kept?.job ?? null), hours },
      // A turn with a job is where that was put; a done one where it was done.
      ...{
        month: monthOf((standing === 'done' && kept?.doneDay) || (standing === 'under-way' && kept?.jobDueDay) || dueDay),
        months,
        late: isLate(dueDay, leeway, today),
      },
    }
  })
}

const keyOf = ({ agreementId, dueDay }: Pick<Turn, 'agreementId' | 'dueDay'>) => `${agreementId} ${dueDay}`

/** Agreements that end soon, or ended lately without another of their kind at the site. */
function endingOf(found: Agreement[], today: string): Rounds['ending'] {
  const [soon, lately] = [addDays(today, ENDS_SOON_DAYS), addDays(today, -ENDED_LATELY_DAYS)]
  const goesOn = (one: Agreement) =>
    found.some((other) => other !== one && other.siteId === one.siteId && other.kind === one.kind && other.endedDay === null)
  return found
    .flatMap((one) => {
      const lastDay = lastDayOf(one)
      if (lastDay === null || lastDay > soon || lastDay < lately || one.endWhy === 'asked' || one.endWhy === 'erased' || goesOn(one))
        return []
      const { siteId, siteLabel, town, customerName } = one
      return [{ siteId, siteLabel, town, customerName, ...agreementLine(one, today), lastDay }]
    })
    .sort((a, b) => (a.lastDay < b.lastDay ? -1 : a.lastDay > b.lastDay ? 1 : a.id < b.id ? -1 : 1))
}

const byDay = (a: Turn, b: Turn) => (a.dueDay < b.dueDay ? -1 : a.dueDay > b.dueDay ? 1 : a.agreementId < b.agreementId ? -1 : 1)

/**
 * The rounds: which turns a month has, put into the months where crews are free; what was due and is not done; which agreements end soon. Turns that have a job
 * stay where that is to be done, and take their hours from it.
 */
export async function readRounds(scope: Pick<Scope, 'companyId'>, input: { month?: string }, capacityOf: CapacityOf): Promise<Rounds> {
  return inCompany(scope, async (tx) => {
    const { companyId } = scope
    const { today, timeZone } = await companyFacts(tx, companyId)
    const last = monthOf(today, MONTHS_AHEAD - 1)
    const found = await readAgreements(tx, companyId)
    const hoursOf = await hoursOfTurn(tx, companyId)
    const free = await freeHours(tx, companyId, today, timeZone, capacityOf)
    // A turn of the month after the last may be done in the last.
    const turns = found.flatMap((one) => turnsOf(one, today, lastOfMonth(monthOf(today, MONTHS_AHEAD)), hoursOf(one.kind))).sort(byDay)
    const [late, ahead] = [turns.filter((one) => one.late), turns.filter((one) => !one.late)]
    const underWay = ahead.filter((one) => one.standing === 'under-way')
    // What is booked is in the crews' hours already.
    for (const { month, hours, job } of underWay) if (job?.state !== 'booked') free.set(month, (free.get(month) ?? 0) - hours)
    const open = ahead.filter((one) => one.standing === 'open')
    const placed = spreadTurns(
      open.map((one) => ({ ...one, key: keyOf(one) })),
      free,
    )
    const inMonths = [
      ...open.map((one) => ({ ...one, ...(placed.get(keyOf(one)) ?? { fits: true }) })),
      ...underWay.map((one) => ({ ...one, month: one.month < monthOf(today) ? monthOf(today) : one.month, fits: true })),
      ...turns.filter((one) => one.standing === 'done').map((one) => ({ ...one, fits: true })),
    ]
    const month = input.month ?? monthOf(today)
    const lines = (some: (Turn & { fits: boolean })[]): RoundTurn[] => some.map(({ month: _m, months: _a, late: _l, ...one }) => one)
    return {
      months: [...free.keys()]
        .filter((one) => one <= last)
        .map((one) => {
          const here = inMonths.filter((turn) => turn.month === one)
          const toDo = here.filter((turn) => turn.standing !== 'done')
          const hours = toDo.reduce((sum, turn) => sum + turn.hours, 0)
          return { month: one, turns: toDo.length, done: here.length - toDo.length, hours, freeHours: free.get(one) ?? 0 }
        }),
      month,
      due: lines(inMonths.filter((one) => one.month === month).sort(byDay)),
      late: lines(late.filter((one) => one.standing !== 'done' && one.standing !== 'skipped').map((one) => ({ ...one, fits: true }))),
      ending: endingOf(found, today),
    }
  })
}
