import type { Load, RoutingProblem, Span } from './problem.ts'

/**
 * What of a problem cannot be planned with, as sentences; none when it can. A visit that fits nowhere is no fault of the problem: it comes back as left out.
 */
export function problemFaults(problem: RoutingProblem): string[] {
  const faults: string[] = []
  const { places, durations, distances } = problem
  if (!whole(places) || places < 1) return ['The number of places must be a whole number from 1 up.']
  for (const [name, table] of Object.entries({ durations, distances })) {
    if (table.length !== places * places) {
      faults.push(`The table of ${name} has ${table.length} entries; ${places} places need ${places * places}.`)
      continue
    }
    const bad = Array.from(table).findIndex((entry) => !(entry >= 0 && Number.isFinite(entry)) || (name === 'durations' && !whole(entry)))
    if (bad >= 0) {
      const where = `from place ${Math.floor(bad / places)} to ${bad % places}`
      faults.push(
        `The table of ${name} holds ${table[bad]} ${where}; it must be 0 or more${name === 'durations' ? ', in whole ticks' : ''}.`,
      )
    }
  }
  const isPlace = (place: number): boolean => whole(place) && place < places
  const isCrewDay = (r: number): boolean => whole(r) && r < problem.crewDays.length
  for (const visit of problem.visits) {
    const say = (words: string) => faults.push(`Visit ${visit.id}: ${words}`)
    if (!isPlace(visit.place)) say(`place ${visit.place} is not in the tables.`)
    if (!whole(visit.serviceTicks)) say(`its work takes ${visit.serviceTicks} ticks; it must be a whole number, 0 or more.`)
    if (!isPrice(visit.lasts?.mean ?? 0) || !isPrice(visit.lasts?.variance ?? 0)) say('what it really takes is no number or below 0.')
    if (!whole(visit.people)) say(`it needs ${visit.people} people; it must be a whole number, 0 or more.`)
    if (!visit.windows.every(isSpan)) say('a window has an end before its beginning, or a time that is no whole number.')
    if (!isLoad(visit.out) || !isLoad(visit.back)) say('a load is no number or below 0.')
    if (visit.promised && (!isCrewDay(visit.promised.crewDay) || !isSpan(visit.promised.start)))
      say('its promise names no crew-day or no time.')
    if (visit.allowedCrewDays?.every(isCrewDay) === false) say('a crew-day it may be done by does not exist.')
    if (visit.dislikes?.every((dislike) => isCrewDay(dislike.crewDay) && isPrice(dislike.price)) === false)
      say('a dislike names no crew-day or no price.')
    const { crewDay, start, price } = visit.stands ?? { crewDay: 0, start: 0, price: 0 }
    if (visit.stands && !(isCrewDay(crewDay) && whole(start) && isPrice(price))) say('where it stands names no crew-day, time or price.')
    if (!isPrice(visit.leaveOutPrice ?? 0) || !isPrice(visit.latePricePerDay ?? 0)) say('a price is no number or below 0.')
    if (!Number.isFinite(visit.releaseDay ?? 0) || !Number.isFinite(visit.dueDay ?? 0)) say('its release or due day is no number.')
  }
  for (const crew of problem.crewDays) {
    const say = (words: string) => faults.push(`Crew-day ${crew.id}: ${words}`)
    if (!isPlace(crew.startPlace) || !isPlace(crew.endPlace)) say('its start or end is not in the tables.')
    if (!isSpan(crew.shift) || !whole(crew.latestEnd) || crew.latestEnd < crew.shift.to) {
      say('its shift must be whole ticks, in order, and end no later than the latest end.')
    }
    if (!crew.pauses.every((pause) => isSpan(pause.start) && whole(pause.ticks))) say('a pause must have whole ticks, in order.')
    if (!(crew.rush ?? []).every((rush) => rush.from <= rush.to && rush.factor > 0 && Number.isFinite(rush.factor))) {
      say('a rush factor must be above 0, within times in order.')
    }
    if (!isLoad(crew.capacity)) say('its capacity is no number or below 0.')
    if (!Number.isFinite(crew.day) || !whole(crew.people)) say('its day or its number of people is no number.')
    const prices = [crew.distancePrice, crew.drivePrice, crew.overtimePrice, crew.sendPrice, crew.unfairPrice ?? 0]
    if (!prices.every(isPrice)) say('a price is no number or below 0.')
    const { by, deviations, driveSpread, price } = crew.reserve ?? { by: 0, deviations: 0, driveSpread: 0, price: 0 }
    if (!whole(by) || ![deviations, driveSpread, price].every(isPrice)) say('its reserve has a figure that is no number or below 0.')
    if (crew.fairShareTicks !== undefined && !isPrice(crew.fairShareTicks)) say('its fair share is no number or below 0.')
  }
  return faults
}

/** Times are kept in 32 bits. */
const whole = (n: number): boolean => Number.isInteger(n) && n >= 0 && n < 2 ** 30
const isSpan = (span: Span): boolean => whole(span.from) && whole(span.to) && span.from <= span.to
const isPrice = (price: number): boolean => Number.isFinite(price) && price >= 0
const isLoad = (load: Load): boolean => isPrice(load.ft3) && isPrice(load.lb)
