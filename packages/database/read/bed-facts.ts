import type { TwinTank } from '@almanac/records/arrangement'
import type { BedFacts } from '@almanac/records/bed-facts'
import type { RecordedResinKind } from '@almanac/records/resin-kind'
import type { Prisma } from '../generated/client.ts'

const FIRST = { orderBy: { id: 'asc' }, take: 1 } as const
const VALVE = { cardId: true, tubeOdIn: true, backwashGpm: true } as const

/** What of a tank its bed's record needs: the tank's own valve, and the one its softener shares among tanks. */
export const TANK_FACTS = {
  include: {
    valves: { where: { archivedAt: null }, select: VALVE, ...FIRST },
    softener: { select: { valves: { where: { archivedAt: null, tankId: null }, select: VALVE, ...FIRST } } },
  },
} satisfies Prisma.TankDefaultArgs

/** Include it wherever `bedFacts` is asked for. */
export const BED_FACTS = { tank: TANK_FACTS } satisfies Prisma.BedInclude

type ValveFacts = { cardId: string | null; tubeOdIn: number | null; backwashGpm: number | null }
type BedWithFacts = {
  id: string
  resinKind: string
  volumeFt3: number | null
  gravelLb: number | null
  tubeCutIn: number | null
  tank: {
    diameterIn: number | null
    heightIn: number | null
    nominalGrains: number | null
    sizeAsWritten: string | null
    valves: readonly ValveFacts[]
    softener: { valves: readonly ValveFacts[] } | null
  }
}

/** Include it wherever `twinOf` is asked for. */
export const TWIN_FACTS = { select: { arrangement: true, tanks: { where: { archivedAt: null }, select: { id: true } } } } as const

/** Which of several tanks a bed stands in; null for a softener of one. */
export function twinOf(softener: { arrangement: string; tanks: readonly unknown[] } | null, position: number | null): TwinTank | null {
  if (!softener || softener.tanks.length < 2) return null
  return { position, of: softener.tanks.length, arrangement: softener.arrangement as TwinTank['arrangement'] }
}

/** A bed's record as everything of its rebed is made from it; the tank's own valve counts before one that the softener's tanks share. */
export function bedFacts({ tank, ...bed }: BedWithFacts): BedFacts {
  const valve = tank.valves[0] ?? tank.softener?.valves[0] ?? null
  return {
    bedId: bed.id,
    resinKind: bed.resinKind as RecordedResinKind,
    volumeFt3: bed.volumeFt3,
    gravelLb: bed.gravelLb,
    tubeCutIn: bed.tubeCutIn,
    diameterIn: tank.diameterIn,
    heightIn: tank.heightIn,
    nominalGrains: tank.nominalGrains,
    sizeAsWritten: tank.sizeAsWritten,
    tubeOdIn: valve?.tubeOdIn ?? null,
    valveCardId: valve?.cardId ?? null,
    backwashGpm: valve?.backwashGpm ?? null,
  }
}
