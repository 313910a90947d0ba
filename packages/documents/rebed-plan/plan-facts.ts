import type { TwinTank } from '@almanac/records/arrangement'
import type { BedFacts } from '@almanac/records/bed-facts'
import type { Disinfectant } from '@almanac/records/disinfectant'
import type { EmptiedTank } from '@almanac/records/emptied-tank'
import type { PrintedHead } from '@almanac/records/letterhead'
import type { Paper } from '@almanac/records/paper'
import type { SupplyKind } from '@almanac/records/supply-kind'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import type { ShelfBag } from '@almanac/softener/kit/bags-on-shelf'
import type { Display } from '@almanac/units/display'

/** What a rebed plan is made from; null where it is not known. Of the customer only where the softener stands, how to get to it and whom to call;
 * no price: the sheet may lie in their cellar. */
export type PlanFacts = {
  firmName: string
  logo: PrintedHead['logo']
  /** The day it is printed, in words. */
  printed: string
  display: Omit<Display, 'timeZone'>
  /** What the company prints on. */
  paper: Paper
  figures: FirmFigures
  site: { label: string; street: string | null; town: string | null; accessNotes: string | null; whom: string | null }
  softenerLabel: string | null
  /** The visit it is printed for, in words: when, and who comes; null where none is booked. */
  visit: { when: string; crew: string } | null
  /** Which of several tanks; null for a softener of one. */
  twin: TwinTank | null
  bed: BedFacts
  /** Where an earlier visit took the bed out and made safe: what it found. Null where the bed is in the tank. */
  emptied: EmptiedTank | null
  /** In words: "between 2014 and 2016". */
  bedBegan: string | null
  water: {
    source: SupplyKind | null
    hardnessGpg: number | null
    ironMgL: number | null
    temperatureC: number | null
    /** Null where it is not known. */
    disinfectant: Disinfectant | null
  }
  shelf: readonly ShelfBag[]
}
