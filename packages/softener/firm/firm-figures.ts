import type { ResinKindId } from '@almanac/records/resin-kind'
import type { BagSize } from '../kit/bag-plan.ts'
import type { TankSize, UsualRange } from '../tanks/tank-sizes.ts'
import type { CapacityCurve } from '../water/capacity-curves.ts'
import type { MetalAllowance } from '../water/compensated-hardness.ts'

/** A control valve as the firm knows it: what sort it is and what follows from that. Generic: no maker and no product. */
export type ValveCard = {
  readonly id: string
  readonly label: string
  /** Words by which someone on the telephone would know it. */
  readonly labelWords: readonly string[]
  readonly control: 'meter' | 'timer'
  /** Outside diameter of the distributor tube it seals on, in; null where it differs. */
  readonly tubeOdIn: number | null
  /** Backwash flows it can be fitted for, gpm, rising; empty where not known. */
  readonly backwashGpm: readonly number[]
  /** Flow at which it refills the brine tank, gpm; null where not known. */
  readonly refillGpm: number | null
  /** How high the tube stands: flush with the rim, or with an offset. */
  readonly tubeRule: string
  /** Which O-rings and seals to bring. */
  readonly seals: string
  readonly source: string
}

/** What is kept in hand when the softener regenerates: so many days' use, or a share of the capacity. */
export type Reserve = { readonly kind: 'days'; readonly days: number } | { readonly kind: 'share'; readonly share: number }

/** The constants a firm may set for itself. Everything that computes for a firm takes these; `USUAL_FIGURES` where it set none. */
export type FirmFigures = {
  /** Usual fill by tank, ordered by diameter, then height. */
  readonly tanks: readonly TankSize[]
  readonly valves: readonly ValveCard[]
  /** The firm's bags, largest first; null means those usual for its units. */
  readonly bagSizes: readonly BagSize[] | null
  /** Operating capacity against salt, by resin. */
  readonly curves: Readonly<Record<ResinKindId, CapacityCurve>>
  readonly allowance: MetalAllowance
  /** Use gravel from this volume, ft³, where the record does not say; the record of a unit outranks it. */
  readonly gravelFromFt3: number
  /** Hardness at the valve outlet after a rebed, gpg: below it little bypasses. */
  readonly outletLimitGpg: number
  /** Backwash expansion as a share of the settled depth, and the flows the firm sets, gpm per ft² of tank. */
  readonly backwash: { readonly wantedExpansion: number; readonly gpmFt2: UsualRange }
  readonly reserve: Reserve
  /** Prices in the currency's minor units; null where the firm has not said: no default price. */
  readonly saltPriceMinorPerLb: number | null
  readonly waterPriceMinorPerGal: number | null
}

/** One figure the firm set: its key and value as stored, not yet believed. */
export type FigureOverride = { readonly key: string; readonly value: unknown }
