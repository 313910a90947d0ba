import type { LinkedProblem } from './linked-problem.ts'

/** What is wrong with a problem of linked visits, one sentence each; empty when it can be planned from. */
export function linkedFaults(problem: LinkedProblem): string[] {
  const faults: string[] = []
  const { visits, people, places, durations, distances } = problem
  const isPlace = (place: number): boolean => Number.isInteger(place) && place >= 0 && place < places
  for (const [name, table] of [['drive durations', durations] as const, ['distances', distances] as const]) {
    if (table.length !== places * places)
      faults.push(`The table of ${name} has ${table.length} entries; ${places} places need ${places * places}.`)
    for (let i = 0; i < table.length; i++) {
      if ((table[i] as number) >= 0) continue
      faults.push(
        `The table of ${name} holds ${table[i]} from place ${Math.floor(i / places)} to place ${i % places}; it must be 0 or more.`,
      )
      break
    }
  }
  for (const visit of visits) {
    if (visit.place !== null && !isPlace(visit.place))
      faults.push(`${visit.id} lies at place ${visit.place}, which the tables do not have.`)
    if (visit.needs.length === 0) faults.push(`${visit.id} needs nobody; give it at least one part.`)
    if (visit.needs.some((need) => !(need.ticks > 0)))
      faults.push(`${visit.id} has a part that takes no time; each part must take more than 0.`)
    if (visit.windows.some((window) => !(window.from <= window.to))) faults.push(`${visit.id} has a window that ends before it begins.`)
    if (visit.needs.length > 1 && visit.link === undefined)
      faults.push(`${visit.id} has several parts and does not say how they hang together.`)
    if (visit.link?.kind === 'after') {
      if (visit.needs.length !== 2) faults.push(`${visit.id}: one part after the other takes exactly two parts.`)
      if (!(visit.link.least >= 0 && visit.link.most >= visit.link.least))
        faults.push(`${visit.id}: the time between its parts cannot be kept.`)
    }
    if (visit.leaveOutPrice !== undefined && !(visit.leaveOutPrice >= 0))
      faults.push(`${visit.id}: the price of leaving it out must be 0 or more.`)
  }
  for (const person of people) {
    if (!isPlace(person.startPlace) || !isPlace(person.endPlace))
      faults.push(`${person.id} begins or ends at a place that the tables do not have.`)
    if (!(person.shift.from <= person.shift.to)) faults.push(`${person.id}'s shift ends before it begins.`)
    if (!(person.overtimePrice >= 0)) faults.push(`${person.id}: the price of overtime must be 0 or more.`)
  }
  const prices = Object.entries(problem.prices)
  for (const [name, price] of prices) if (!(price >= 0)) faults.push(`The price ${name} is ${price}; it must be 0 or more.`)
  return faults
}
