import type { BedFactChanges } from '@almanac/contract/beds'
import { judgeInTank } from '@almanac/service-rules/amounts/judge-in-tank'
import { tankRoom } from '@almanac/softener/tanks/tank-room'
import type { AmountDisplay } from '@almanac/units/display'
import { checkAmounts } from '../shared/check-amounts.ts'
import { readTankSize } from '../shared/read-typed-facts.ts'

type Size = { diameterIn: number | null; heightIn: number | null }

/** Refuses facts that cannot be, in any tank or in this one, and unusual ones without a reason. A size sent along counts before the one on record. */
export function checkFacts(tank: Size, facts: BedFactChanges, display: AmountDisplay, why: Record<string, string> | undefined): void {
  const size = facts.tankSize === undefined ? tank : readTankSize(facts.tankSize)
  const room = size && tankRoom(size.diameterIn, size.heightIn, display)
  const judge = (kind: string) => (room ? (value: number, unit: string) => judgeInTank(kind, value, unit, room) : undefined)
  const { volume, gravel, tubeCut, backwash } = facts
  checkAmounts(
    {
      volume: volume && { kind: 'resin', ...volume, judge: judge('resin') },
      gravel: gravel && { kind: 'gravel', ...gravel, judge: judge('gravel') },
      tubeCut: tubeCut && { kind: 'tube', ...tubeCut, judge: judge('tube') },
      backwash: backwash && { kind: 'backwash', ...backwash },
    },
    why,
  )
}
