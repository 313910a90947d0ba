import { oneOf } from '@almanac/records/choices'
import { driverKeys } from '@almanac/records/forecast-driver'
import { questionKeys } from '@almanac/records/forecast-question'
import { dayOf } from '../days.ts'
import type { BedForecast, Prisma } from '../generated/client.ts'

/** A stored forecast for the screens. */
export function readStoredForecast(forecast: BedForecast) {
  return {
    asOfDay: dayOf(forecast.asOfDay),
    computedAt: forecast.computedAt.toISOString(),
    due10Day: dayOf(forecast.due10Day),
    due50Day: dayOf(forecast.due50Day),
    due90Day: dayOf(forecast.due90Day),
    chance3Months: forecast.chance3Months,
    chance12Months: forecast.chance12Months,
    chance24Months: forecast.chance24Months,
    chanceAlreadyFailed: forecast.chanceAlreadyFailed,
    drivers: listOf(forecast.drivers).flatMap(driverLine),
    assumptions: listOf(forecast.assumptions).map(wordsOf),
    missing: listOf(forecast.missing).map(wordsOf),
    question: oneOf(questionKeys, forecast.questionKey),
    refusal: forecast.refusal,
  }
}

function listOf(json: Prisma.JsonValue): Prisma.JsonValue[] {
  return Array.isArray(json) ? json : []
}

/** A stored cause; nothing where its key is not, or no longer, one of the causes. */
function driverLine(json: Prisma.JsonValue) {
  if (typeof json !== 'object' || json === null || !('words' in json)) return []
  const { key, yearsTaken, words } = json as Prisma.JsonObject
  const known = oneOf(driverKeys, String(key))
  return known ? [{ key: known, yearsTaken: Number(yearsTaken ?? 0), words: String(words) }] : []
}

function wordsOf(note: Prisma.JsonValue): string {
  return typeof note === 'object' && note !== null && 'words' in note ? String((note as Prisma.JsonObject).words) : String(note)
}
