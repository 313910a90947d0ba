import type { ResinKindId } from '@almanac/records/resin-kind'
import type { FirmFigures, ValveCard } from '@almanac/softener/firm/firm-figures'
import type { ShelfBag } from '@almanac/softener/kit/bags-on-shelf'
import type { PriceList } from '@almanac/softener/kit/price-kit'
import type { UnitSystem } from '@almanac/units/unit-system'

/** What a rebed plan is made from; null where it is not known. Nothing of the customer but where the softener stands and how to get to it. */
export type PlanFacts = {
  firmName: string
  /** The day it is printed, in words. */
  printed: string
  unitSystem: UnitSystem
  figures: FirmFigures
  site: { label: string; street: string | null; town: string | null; accessNotes: string | null }
  softenerLabel: string | null
  tank: { diameterIn: number | null; heightIn: number | null; nominalGrains: number | null; sizeAsWritten: string | null }
  /** A short sign by which the office finds the bed again. */
  bedSign: string
  resinKind: ResinKindId | null
  resinVolumeFt3: number | null
  gravelLb: number | null
  tubeCutIn: number | null
  /** In words: "between 2014 and 2016". */
  bedBegan: string | null
  valve: { card: ValveCard | null; tubeOdIn: number | null; backwashGpm: number | null } | null
  water: {
    source: 'town' | 'private-well' | null
    hardnessGpg: number | null
    ironMgL: number | null
    temperatureC: number | null
    disinfectant: string | null
  }
  prices: PriceList
  shelf: readonly ShelfBag[]
}
