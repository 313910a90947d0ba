import type { JobKind } from '@almanac/records/job-kind'
import { type Abilities, crewHas, skillsNeeded, skillWords } from '@almanac/service-rules/crews/crew-skills'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'

type JobRow = { kind: string; crewSize: number; valveCardIds: readonly string[] }

/** The label of a valve's card. */
export const valveNameOf = (figures: FirmFigures) => (cardId: string) =>
  figures.valves.find((one) => one.id === cardId)?.label ?? 'no longer on the list'

/** What a job asks of its crew, by the rules and in the words that stand in a sentence: the planner compares and names them by these. */
export function skillsOfJob(job: JobRow, figures: FirmFigures): string[] {
  return neededBy(job).map((skill) => skillWords(skill, valveNameOf(figures)))
}

/** The same skills as the rules name them. */
export const neededBy = ({ kind, crewSize, valveCardIds }: JobRow) => skillsNeeded({ kind: kind as JobKind, crewSize, valveCardIds })

/** Which of the skills that jobs ask for a crew has, in the same words. */
export function skillsOfCrew(people: readonly Abilities[], jobs: readonly JobRow[], figures: FirmFigures): string[] {
  const asked = new Set(jobs.flatMap(neededBy))
  return [...asked].filter((skill) => crewHas(people, skill)).map((skill) => skillWords(skill, valveNameOf(figures)))
}
