import type { VisitPage } from '@almanac/contract/visits'
import type { Answers } from '@almanac/service-rules/close-out/record-from-answers'

/**
 * A visit with its tank as the crew measured it: kit, drawing, steps and what is judged by the tank follow. What is on record of the filling and the tube of another tank
 * says nothing of this one. The office reads the same from the answers (service-rules/close-out/tank-as-found.ts).
 */
export function asFound(visit: VisitPage, answers: Answers): VisitPage {
  const { bed } = visit
  if (!bed) return visit
  const diameterIn = answers['found-diameter-in']?.value ?? bed.diameterIn
  const heightIn = answers['found-height-in']?.value ?? bed.heightIn
  if (diameterIn === bed.diameterIn && heightIn === bed.heightIn) return visit
  const unknown = { sizeAsWritten: null, nominalGrains: null, volumeFt3: null, gravelLb: null, tubeCutIn: null }
  return { ...visit, bed: { ...bed, ...unknown, diameterIn, heightIn } }
}
