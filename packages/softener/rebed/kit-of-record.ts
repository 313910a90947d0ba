import type { BedFacts } from '@almanac/records/bed-facts'
import type { Result } from '@almanac/units/result'
import type { RebedKit } from '../kit/kit-types.ts'
import { rebedKit } from '../kit/rebed-kit.ts'
import { kitInputOf, type RebedFirm } from './rebed-of-record.ts'

/** The kit of the bed's rebed; refuses where the tank's size is not known or not possible. */
export const kitOf = (bed: BedFacts, firm: RebedFirm): Result<RebedKit> => rebedKit(kitInputOf(bed, firm))
