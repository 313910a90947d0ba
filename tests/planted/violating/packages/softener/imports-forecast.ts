import type { BedForecast } from '@almanac/forecast/bed-forecast/bed-forecast-types'

export type Due = BedForecast
