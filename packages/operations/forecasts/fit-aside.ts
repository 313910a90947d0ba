import type { BedRecord } from '@almanac/forecast/fit/bed-record'
import { fitBedRecords, type RecordsFit } from '@almanac/forecast/fit/fit-bed-records'
import { learnFromSamples } from '@almanac/forecast/fit/learn-from-samples'
import { pooledPrior } from '@almanac/forecast/fit/pool-firms'
import type { ForecastParameters } from '@almanac/forecast/priors/forecast-parameters'
import { answerAside } from '@almanac/runtime/answer-aside'
import type { Result } from '@almanac/units/result'

export type FitInput = {
  records: BedRecord[]
  prior: ForecastParameters
  /** Fits of other firms, where this one learns together with them; else null. */
  others: ForecastParameters[] | null
  asOfDay: string
  version: string
}

export type FitAnswer = {
  fit: Result<RecordsFit>
  /** The same records fitted from the prior alone: all that may be handed on. Null where nothing is. */
  own: ForecastParameters | null
}

/** The fit as a process of its own calls it, with what graded samples of beds taken out say on top: seconds of arithmetic for a firm of a few thousand beds. */
function fitAside({ records, prior, others, asOfDay, version }: FitInput): FitAnswer {
  const start = pooledPrior(prior, { optedIn: others !== null, others: others ?? [] })
  const fit = fitBedRecords(records, start, asOfDay, version)
  if (!fit.ok) return { fit, own: null }
  const alone = others === null ? null : start === prior ? fit : fitBedRecords(records, prior, asOfDay, version)
  const samples = records.filter((record) => record.end !== null)
  const parameters = { ...learnFromSamples(fit.value.parameters, samples, asOfDay), version }
  return { fit: { ...fit, value: { ...fit.value, parameters } }, own: alone?.ok ? alone.value.parameters : null }
}

answerAside(fitAside)
