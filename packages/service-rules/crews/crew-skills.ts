import type { JobKind } from '@almanac/records/job-kind'

/** Someone who does all work, or only what `skills` names. */
export type Abilities = { name: string; doesAll: boolean; skills: readonly string[] }

export const LIFTING = 'lifting'
export const PLUMBING_LICENCE = 'plumbing-licence'
const LIFTING_BY_TWO = 'lifting:2'
const VALVE = 'valve:'

/** The skill of knowing one sort of valve, by the id of its card. */
export const valveSkill = (cardId: string) => `${VALVE}${cardId}`

/** Kinds that carry full tanks or a bed's worth of bags. Common practice, no source. */
const HEAVY: readonly JobKind[] = ['rebed', 'installation', 'exchange', 'warranty-return']
/** Kinds that open the valve. Common practice, no source. */
const OPENS_VALVE: readonly JobKind[] = ['rebed', 'exchange', 'repair', 'emergency']
/** Kinds that cut into a house's pipes. Common practice, no source: what needs a licence is for the local plumbing code to say. */
const CUTS_PIPES: readonly JobKind[] = ['installation']

export type JobForSkills = { kind: JobKind; crewSize: number; valveCardIds: readonly string[] }

/** What a job asks of its crew beside its number: two who may lift where two are to carry, someone who knows the valve, someone with a licence. */
export function skillsNeeded({ kind, crewSize, valveCardIds }: JobForSkills): string[] {
  const needed: string[] = []
  if (HEAVY.includes(kind)) needed.push(crewSize >= 2 ? LIFTING_BY_TWO : LIFTING)
  if (CUTS_PIPES.includes(kind)) needed.push(PLUMBING_LICENCE)
  if (OPENS_VALVE.includes(kind)) needed.push(...[...new Set(valveCardIds)].map(valveSkill))
  return needed
}

const has = (person: Abilities, skill: string) => person.doesAll || person.skills.includes(skill)

/** Whether a crew has a skill between them. */
export function crewHas(people: readonly Abilities[], skill: string): boolean {
  return skill === LIFTING_BY_TWO ? people.filter((one) => has(one, LIFTING)).length >= 2 : people.some((one) => has(one, skill))
}

/** A skill as it stands in a sentence after "can do". `valveName` gives the label of a card. */
export function skillWords(skill: string, valveName: (cardId: string) => string): string {
  if (skill === LIFTING) return 'heavy lifting'
  if (skill === LIFTING_BY_TWO) return 'heavy lifting by two'
  if (skill === PLUMBING_LICENCE) return 'work that asks for a plumbing license'
  return skill.startsWith(VALVE) ? `work on the valve “${valveName(skill.slice(VALVE.length))}”` : skill
}

/** Why a crew may not do a job, in a sentence; null when it may. */
export function skillsLacking(
  needed: readonly string[],
  people: readonly Abilities[],
  valveName: (cardId: string) => string,
): string | null {
  const lacking = needed.filter((skill) => !crewHas(people, skill)).map((skill) => skillWords(skill, valveName))
  return lacking.length === 0 ? null : `This crew isn’t cleared for ${lacking.join(' and ')}.`
}
