import type { Policy, PolicyInput } from '@almanac/contract/forecasts'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { readPolicyInputs } from '@almanac/database/read/policy-inputs'
import { readShownFit } from '@almanac/database/read/shown-fit'
import type { InletWater } from '@almanac/forecast/exposure/acceleration'
import { waterHistory } from '@almanac/forecast/exposure/water-history'
import { whenToReplace } from '@almanac/forecast/policy/when-to-replace'
import type { ForecastParameters } from '@almanac/forecast/priors/forecast-parameters'
import { crosslinkPercent } from '@almanac/records/resin-kind'
import { supplyGroup } from '@almanac/records/supply-kind'
import { notFound } from '@almanac/runtime/errors'
import { type CompanyFacts, companyFacts } from '../shared/company-facts.ts'
import { supplyPeriods } from './forecast-input.ts'
import { forecastSpeaking } from './forecast-speaking.ts'
import { parametersOf } from './parameters.ts'

/** Costs to begin with where the firm has not said, in minor units: invented examples, and the page says so. */
const EXAMPLE = { plannedMinor: 38_000, failureMinor: 62_000, beadsMinor: 90_000, beadsShare: 0.05 }

/** Fewer ended beds than this say nothing of how often beads are lost. */
const ENDED_ENOUGH = 50

type Facts = Awaited<ReturnType<typeof readPolicyInputs>>
type Source = 'asked' | 'settings' | 'records' | 'example'

/** Each cost as asked for, else as the firm set it or its records tell, else an example; with where it came from. */
function costsOf(input: PolicyInput, { settings, endedBeds, beadsLost }: Facts) {
  const recorded = endedBeds >= ENDED_ENOUGH ? beadsLost / endedBeds : null
  const choose = (asked: number | undefined, known: number | null | undefined, from: Source, example: number): [number, Source] =>
    asked !== undefined ? [asked, 'asked'] : known !== null && known !== undefined ? [known, from] : [example, 'example']
  const planned = choose(input.plannedMinor, settings?.plannedRebedMinor, 'settings', EXAMPLE.plannedMinor)
  const failure = choose(input.failureMinor, settings?.failureMinor, 'settings', EXAMPLE.failureMinor)
  const beads = choose(input.beadsMinor, settings?.beadsMinor, 'settings', EXAMPLE.beadsMinor)
  const share = choose(input.beadsShare, recorded, 'records', EXAMPLE.beadsShare)
  return {
    costs: { plannedMinor: planned[0], failureMinor: failure[0], beadsMinor: beads[0], beadsShare: share[0] },
    costSources: { plannedMinor: planned[1], failureMinor: failure[1], beadsMinor: beads[1], beadsShare: share[1] },
  }
}

/** The water of a supply as it is now; without one, what is assumed where nobody knows. */
function waterNow(
  facts: Facts,
  company: CompanyFacts,
  parameters: ForecastParameters,
): { water: InletWater; words: string } | { reason: string } {
  const input = { supplyPeriods: supplyPeriods(facts.periods), tests: [], preTreatments: [] }
  const history = waterHistory(input, company.today, company.today, parameters.assumedWater, forecastSpeaking(company))
  if (!history.ok) return { reason: history.reason }
  const now = history.value.at(-1)
  return now ? { water: now, words: now.why } : { reason: 'This supply’s water quality is not on record. Enter it on the Water page.' }
}

const answerOf = (found: ReturnType<typeof whenToReplace>): Policy['answer'] =>
  found.ok ? { ok: true, ...found.value } : { ok: false, reason: found.reason }

/**
 * When it is cheapest to rebed a bed put in on such water, by cost a year over its life; costs in minor units of the company's currency. The doubt about how long beds
 * last is carried through. About 50 ms.
 */
export async function whenToAct(scope: Pick<Scope, 'companyId'>, input: PolicyInput): Promise<Policy> {
  const { companyId } = scope
  const { facts, fit, company, used } = await inCompany(scope, async (tx) => {
    const company = await companyFacts(tx, companyId)
    const facts = await readPolicyInputs(tx, companyId, input.waterSupplyId ?? null)
    return { facts, fit: await readShownFit(tx, companyId), company, used: await parametersOf(tx, companyId, company.today) }
  })
  if (input.waterSupplyId && facts.supplyName === null) throw notFound('water supply')
  const { costs, costSources } = costsOf(input, facts)
  const water = waterNow(facts, company, used.parameters)
  const replacement = { planned: costs.plannedMinor, failure: costs.failureMinor, beads: costs.beadsMinor, beadsShare: costs.beadsShare }
  const traits = { crosslinkPercent: crosslinkPercent[input.resinKind], gallonsPerDayPerFt3: null }
  const group = supplyGroup(facts.waterSupplyId, facts.supplyKind)
  return {
    waterSupplyId: facts.waterSupplyId,
    water: 'words' in water ? water.words : '',
    supplies: facts.supplies,
    costs,
    costSources,
    bedsWatched: facts.bedsWatched,
    fit,
    answer:
      'reason' in water
        ? { ok: false, reason: water.reason }
        : answerOf(whenToReplace(traits, water.water, used.parameters, replacement, input.fixedAgeYears, group)),
  }
}
