import type { FirmFigures } from '@almanac/softener/firm/firm-figures'

/** Outside diameter of the distributor tube, in: as recorded for the unit, else by its valve's card, else null. */
export function tubeOf(figures: FirmFigures, recordedIn: number | null | undefined, cardId: string | null | undefined): number | null {
  return recordedIn ?? figures.valves.find((card) => card.id === cardId)?.tubeOdIn ?? null
}
