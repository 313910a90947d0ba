import type { Channel } from '@almanac/records/channel'
import type { Disinfectant } from '@almanac/records/disinfectant'
import type { EndCause } from '@almanac/records/end-cause'
import type { RowProblemKind } from '@almanac/records/import-state'
import type { ResinKindId } from '@almanac/records/resin-kind'
import type { ConcentrationUnit } from '@almanac/units/concentration'
import type { DayDisplay } from '@almanac/units/format-day'
import type { HardnessUnit } from '@almanac/units/hardness'
import type { VolumeUnit } from '@almanac/units/volume'
import type { ImportField } from './fields.ts'

/** How sharply a written date fixes the day. `before` and `after` are open at one side and closed by a stated assumption. */
export type DayPrecision = 'day' | 'month' | 'season' | 'year' | 'about' | 'between' | 'before' | 'after'

/** A date as a firm wrote it: somewhere from `earliestDay` to `latestDay`, both ISO days and both included. */
export interface DayReading {
  earliestDay: string
  latestDay: string
  asWritten: string
  precision: DayPrecision
}

/** Which number comes first in a date like 03/04/2015. `undecided` makes such a date a problem instead of a guess. */
export type DayOrder = 'day-first' | 'month-first' | 'undecided'

export type ResinVolumeUnit = Extract<VolumeUnit, 'ft3' | 'L'>

/** What other rows leave no doubt of: a supply's hardness, and how many say it. */
export type KnownHardness = { gpg: number; rows: number }

/** What is known of each supply, by its folded name; plain data. */
export type HardnessBySupply = Record<string, KnownHardness>

/** What a bare number of a column is in: one unit for all, or whichever is plausible for each. */
export type ColumnHardnessUnit = HardnessUnit | 'each-by-size'

/** Hardness as CaCO₃ in grains per US gallon, beside what was written. */
export interface HardnessReading {
  hardnessGpg: number
  enteredValue: number
  enteredUnit: HardnessUnit
  asWritten: string
}

/** A concentration in mg/L. `atMost` is true for "<0.05" and "trace": the true value is anywhere from 0 to `mgL`. */
export interface ConcentrationReading {
  mgL: number
  atMost: boolean
  enteredValue: number
  enteredUnit: ConcentrationUnit
  asWritten: string
}

/** A volume of resin in cubic feet, beside what was written. */
export interface ResinVolumeReading {
  resinVolumeFt3: number
  enteredValue: number
  enteredUnit: ResinVolumeUnit
  asWritten: string
}

/**
 * A tank as a firm wrote it. `kind` says what the text gave: the tank's size in inches, only a nominal grain rating, or only a
 * resin volume. What the text did not give is null, except that a grain rating also gives its nominal resin volume.
 */
export interface TankAsRead {
  kind: 'size' | 'nominal-grains' | 'resin-volume'
  diameterIn: number | null
  heightIn: number | null
  nominalGrains: number | null
  resinVolumeFt3: number | null
  tankCount: number
  asWritten: string
  /** Words that were left unread; null where all was. */
  unread: string | null
}

/** Yes, no, or null where the file is silent. Silence is never a yes. */
export type ConsentReading = Record<Channel, boolean | null>

/** Where the beginning of the present bed was taken from; a dated rebed always outranks the installation of the softener. */
export type BedBeganFrom = 'resin-column' | 'notes-rebed' | 'installed-column' | 'notes-installed'

/** A filling that the present one, or one before it, came after. Null where nobody says when it went in. */
export interface EarlierBed {
  began: DayReading | null
  ended: DayReading
  cause: EndCause
}

/** One row of a firm's file, understood. Texts are trimmed, null where the file is silent. */
export interface ImportedRecord {
  referenceNumber: string | null
  customerName: string
  contact: { name: string | null; phone: string | null; otherPhones: string[]; email: string | null; consent: ConsentReading }
  site: {
    street: string | null
    town: string | null
    postcode: string | null
    region: string | null
    accessNotes: string | null
    /** Degrees north and east, WGS 84. */
    latitude: number | null
    longitude: number | null
  }
  softener: {
    label: string | null
    tankPosition: string | null
    tank: TankAsRead | null
    /** From the tank count column, else from the tank text ("twin 14x65"), else 1. */
    tankCount: number
    installed: DayReading | null
  }
  bed: {
    resinKind: ResinKindId | null
    resinVolume: ResinVolumeReading | null
    began: DayReading | null
    beganFrom: BedBeganFrom | null
    /** The fillings before the present one, the oldest first. */
    earlier: EarlierBed[]
    lastSeen: DayReading | null
  }
  water: {
    supplyName: string | null
    disinfectant: Disinfectant | null
    hardness: HardnessReading | null
    iron: ConcentrationReading | null
    chlorine: ConcentrationReading | null
  }
  notes: string | null
}

/** What one column of the file fills. `field: null` leaves the column out. Column 0 is the first. */
export interface ColumnChoice {
  column: number
  field: ImportField | null
  /** Only for `hardness`: the unit of a number without one. */
  hardnessUnit?: ColumnHardnessUnit
  /** Only for `iron` and `chlorine`. */
  concentrationUnit?: ConcentrationUnit
  /** Only for `resinVolume`, and for a bare number in `tank`. */
  volumeUnit?: ResinVolumeUnit
  /** Only for dates and `notes`; missing means undecided. */
  dayOrder?: DayOrder
}

/** The choices for a whole file, plus its header so that problems can name the column as the firm does. */
export interface ColumnMapping {
  header: string[]
  columns: ColumnChoice[]
}

export interface RowOptions {
  /** Today in the company's zone, ISO day. Nothing in an import may lie after it. */
  today: string
  /** The day on which the list was last right and its softeners worked, if somebody said so; ISO day. */
  listRightOn?: string | null
  /** What the list's other rows leave no doubt of: how hard each supply is. */
  hardnessBySupply?: HardnessBySupply
  /** How what is said of a row writes its days. */
  display: DayDisplay
}

/** One value that a person must look at. `column` is the header as the firm wrote it, or "Column C" where there is none. */
export interface RowProblem {
  kind: RowProblemKind
  column: string
  field: ImportField | null
  value: string
  reason: string
}

/** Something taken for granted while reading a row, to be shown in the preview. */
export interface RowAssumption {
  column: string
  field: ImportField
  sentence: string
}

/** An understood row may hold cells that were left empty, or say something to decide about: they are its problems, and it goes in all the same. */
export type RowReading =
  | { ok: true; record: ImportedRecord; assumptions: RowAssumption[]; problems: RowProblem[] }
  | { ok: false; problems: RowProblem[] }
