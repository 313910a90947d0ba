import type { BedFacts } from '@almanac/records/bed-facts'
import { kitOf } from '../rebed/kit-of-record.ts'
import type { RebedFirm } from '../rebed/rebed-of-record.ts'
import { RESIN_KINDS } from '../resin/resin-kinds.ts'
import type { OwnerQuestion } from './owner-or-firm.ts'

/** What was asked of the owner; null where nobody asked. */
export type OwnerTold = Pick<
  OwnerQuestion,
  'access' | 'helper' | 'hasBypass' | 'bypassHolds' | 'valveNeedsPower' | 'metalPipe' | 'pressurePsi' | 'lawAllows' | 'stopCase'
>

/** The question of one bed: what is on record of its tank and water, and what the owner said. */
export function ownerQuestion(bed: BedFacts, waterSource: OwnerQuestion['waterSource'], told: OwnerTold, firm: RebedFirm): OwnerQuestion {
  const kit = kitOf(bed, firm)
  const bagFt3 = kit.ok ? Math.max(...kit.value.bagPlan.bags.map((bag) => bag.volumeFt3)) : null
  return {
    ...told,
    diameterIn: bed.diameterIn,
    fullTankLb: kit.ok ? kit.value.fullTankLb : null,
    bagLb: kit.ok && bagFt3 !== null ? bagFt3 * RESIN_KINDS[kit.value.resinKind].wetWeightLbFt3.value : null,
    waterSource,
    display: firm.display,
  }
}
