import type { DriverKey } from '@almanac/contract/forecasts'
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
    drivers: listOf(forecast.drivers).flatMap((driver) =>
      typeof driver === 'object' && driver !== null && 'words' in driver
        ? [
            {
              key: String((driver as Prisma.JsonObject).key ?? '') as DriverKey,
              yearsTaken: Number((driver as Prisma.JsonObject).yearsTaken ?? 0),
              words: String((driver as Prisma.JsonObject).words),
            },
          ]
        : [],
    ),
    assumptions: listOf(forecast.assumptions).map(wordsOf),
    missing: listOf(forecast.missing).map(wordsOf),
    question: forecast.question,
    refusal: forecast.refusal,
  }
}

function listOf(json: Prisma.JsonValue): Prisma.JsonValue[] {
  return Array.isArray(json) ? json : []
}

function wordsOf(note: Prisma.JsonValue): string {
  return typeof note === 'object' && note !== null && 'words' in note ? String((note as Prisma.JsonObject).words) : String(note)
}
