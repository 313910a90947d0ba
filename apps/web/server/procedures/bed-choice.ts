import 'server-only'
import type { BedChoice } from '@almanac/contract/bed-choice'
import { readBedPlan } from '@almanac/database/read/bed-plan'
import { readSettings } from '@almanac/database/read/firm-settings'
import { readDecisions } from '@almanac/database/read/guides'
import { memberNames } from '@almanac/identity/people'
import { livesOfBed } from '@almanac/operations/forecasts/lives-of-bed'
import { keepDecision } from '@almanac/operations/guides/keep-decision'
import { can } from '../procedure.ts'

/** The record, what the forecast says of a new bed on this water, and the firm's own cost of a rebed, brought together. */
async function choiceFacts(scope: { companyId: string }, bedId: string): Promise<BedChoice> {
  const plan = await readBedPlan(scope, bedId)
  const names = await memberNames(scope.companyId)
  const decisions = await readDecisions(scope, bedId, (personId) => names.get(personId) ?? null)
  const { plannedRebedMinor } = await readSettings(scope)
  if (plan.site === null)
    return {
      plan,
      decisions,
      plannedRebedMinor,
      lives: null,
      refusal: 'The tank is in the workshop with no water, so we can’t say how long its bed lasts.',
    }
  const lives = await livesOfBed(scope, bedId)
  if (!lives.ok) return { plan, decisions, plannedRebedMinor, lives: null, refusal: lives.reason }
  return { plan, decisions, plannedRebedMinor, lives: { ...lives.value, assumptions: lives.assumptions }, refusal: null }
}

export const bedChoice = {
  facts: can('propose:job').bedChoice.facts.handler(({ context, input }) => choiceFacts(context.scope, input.bedId)),
  keepDecision: can('propose:job').bedChoice.keepDecision.handler(({ context, input }) => keepDecision(context.scope, input)),
}
