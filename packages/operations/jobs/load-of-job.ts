import type { Load } from '@almanac/dispatch/problem/problem'
import type { BedFacts } from '@almanac/records/bed-facts'
import { renewsBed } from '@almanac/records/job-kind'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { kitOf } from '@almanac/softener/rebed/kit-of-record'
import type { AmountDisplay } from '@almanac/units/display'
import { rebedFirm } from '../shared/rebed-firm.ts'

/** Spent resin drips: it weighs about what it weighed new, lb per ft³; typical data sheets, 51 to 53. */
const SPENT_LB_PER_FT3 = 52

/** The room of a tank that stands upright: its square floor times its height. A kit that could be made up has both. */
const standingFt3 = (bed: BedFacts | null) => ((bed?.diameterIn ?? 0) ** 2 * (bed?.heightIn ?? 0)) / 1728

/** What a job puts on the vehicle: out to the site, and back from it; an exchange carries a tank each way, as heavy as full, since some come filled and none drains at once. Nothing for what takes no kit, or where its kit can't be made up. */
export function loadOfJob(
  { kind, bed }: { kind: string; bed: BedFacts | null },
  firm: { figures: FirmFigures; display: AmountDisplay },
): { out: Load; back: Load } {
  const nothing = { ft3: 0, lb: 0 }
  const kit = renewsBed(kind) && bed ? kitOf(bed, rebedFirm(firm.figures, firm.display)) : null
  if (!kit?.ok) return { out: nothing, back: nothing }
  if (kind === 'exchange') {
    const tank = { ft3: standingFt3(bed), lb: kit.value.fullTankLb }
    return { out: tank, back: tank }
  }
  const { loadVolumeFt3, loadWeightLb, spentResinFt3 } = kit.value
  return { out: { ft3: loadVolumeFt3, lb: loadWeightLb }, back: { ft3: spentResinFt3, lb: spentResinFt3 * SPENT_LB_PER_FT3 } }
}
