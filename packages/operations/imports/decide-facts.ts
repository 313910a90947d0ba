import { type ImportedFact, type ImportedFacts, isUnknown, sameFact } from './facts.ts'

export type FactDecision = {
  /** Facts to write. */
  changed: ImportedFacts
  /** Facts that stand as the file has them, though the last import wrote otherwise: from now on they count as imported. */
  confirmed: ImportedFacts
  /** Facts that were edited since the import, and stay. */
  kept: string[]
}

/** A later sighting only adds to what is known; an earlier one tells nothing new. */
function isOlderSighting(fact: string, present: ImportedFact | undefined, wanted: ImportedFact): boolean | null {
  if (fact !== 'lastSeenDay') return null
  const [before, after] = [present?.lastSeenDay, wanted.lastSeenDay]
  return typeof before === 'string' && typeof after === 'string' ? after < before : null
}

/**
 * Decides field by field: what the last import wrote and still stands gives way to the file; what was edited since stays; what was never known
 * is filled in. Silence of the file is not passed in, so it erases nothing.
 */
export function decideFacts(present: ImportedFacts, wrote: ImportedFacts, wanted: ImportedFacts): FactDecision {
  const decision: FactDecision = { changed: {}, confirmed: {}, kept: [] }
  for (const [fact, value] of Object.entries(wanted)) {
    const stands = present[fact]
    const last = wrote[fact]
    const older = isOlderSighting(fact, stands, value)
    if (sameFact(stands, value)) {
      if (!sameFact(last, value)) decision.confirmed[fact] = value
    } else if (isUnknown(stands) ? isUnknown(last) : sameFact(stands, last)) decision.changed[fact] = value
    else if (older === false) decision.changed[fact] = value
    else if (older !== true) decision.kept.push(fact)
  }
  return decision
}
