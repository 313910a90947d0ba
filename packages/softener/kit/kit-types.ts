import type { ResinKindId } from '@almanac/records/resin-kind'
import type { FirmFigures, ValveCard } from '../firm/firm-figures.ts'
import type { BagPlan, BagSize } from './bag-plan.ts'
import type { SiteAccess } from './job-weight.ts'
import type { Speaking } from './speaking.ts'

/** What the kit is made for; null or left out where it is not known. A gravel weight of 0 means that the tank has none. */
export type RebedKitInput = Speaking & {
  diameterIn: number | null
  heightIn: number | null
  resinVolumeFt3?: number | null
  nominalGrains?: number | null
  resinKind?: ResinKindId | null
  gravelLb?: number | null
  /** True to renew the gravel, false to fill without; null lets the rule decide. */
  gravelWanted?: boolean | null
  tubeOutsideDiameterIn?: number | null
  oldTubeLengthIn?: number | null
  /** The card of the valve at hand: which tube it seals on, how high the tube stands, its seals. */
  valve?: Pick<ValveCard, 'label' | 'tubeOdIn' | 'tubeRule' | 'seals'> | null
  /** How far above (+) or below (-) the rim the valve wants the tube, in; used where the old tube is not measured. */
  tubeOffsetIn?: number | null
  /** The flow the softener must carry, gpm: decides the tube where neither record nor valve does. */
  flowGpm?: number | null
  openingIn?: number | null
  access?: SiteAccess | null
  /** The bags at hand; the firm's own sizes, else cubic-foot bags in US units, 25 L in metric, where not given. */
  bagSizes?: readonly BagSize[] | null
  /** Strength of the bleach at hand, % sodium hypochlorite. */
  bleachPercent?: number | null
  /** The firm's own tank table, bags and gravel rule; the usual ones where not given. */
  figures?: Pick<FirmFigures, 'tanks' | 'bagSizes' | 'gravelFromFt3'> | null
}

export type KitItem =
  | 'resin'
  | 'gravel'
  | 'distributor-tube'
  | 'tube-cap'
  | 'fill-funnel'
  | 'seals'
  | 'silicone-grease'
  | 'sanitiser'
  | 'spent-resin-container'
  | 'drain-strainer'
  | 'protection'
  | 'tools'
  | 'tests'
  | 'spares'

/** `quantity` counts `unit`; `text` is the line as a person reads it. `toReturn` marks what comes back with the crew. */
export type KitLine = {
  item: KitItem
  label: string
  quantity: number
  unit: 'bag' | 'lb' | 'piece' | 'set' | 'fl oz'
  text: string
  why: string
  source: string
  weightLb: number | null
  volumeFt3: number | null
  toReturn: boolean
}

export type RebedKit = {
  lines: KitLine[]
  resinKind: ResinKindId
  resinFt3: number
  bagPlan: BagPlan
  gravelLb: number
  tubeLengthIn: number
  tubeOutsideDiameterIn: number
  /** Materials to carry in. */
  loadWeightLb: number
  loadVolumeFt3: number
  spentResinFt3: number
  fullTankLb: number
  heaviestLiftLb: number
  heaviestLift: string
  crewSize: number
  crewWhy: string
  warnings: string[]
}
