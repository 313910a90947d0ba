import { disinfectantLines } from '@almanac/records/disinfectant'
import { knownResinKind } from '@almanac/records/resin-kind'
import 'server-only'
import type { BedPlanFacts } from '@almanac/contract/bed-choice'
import type { PlanFacts } from '@almanac/documents/rebed-plan/plan-facts'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { storesForKit } from '@almanac/softener/kit/stores-for-kit'
import { beganWords } from '@/client/bed-facts-words'
import { dayWords } from '@/client/clock-words'

type Company = { name: string; unitSystem: 'us' | 'metric'; currency: string }

/** A bed's record as the rebed plan takes it. `today` is the day in the company's zone. */
export function planFacts(bed: BedPlanFacts, company: Company, figures: FirmFigures, today: string): PlanFacts {
  const { shelf, prices } = storesForKit(bed.stores)
  return {
    firmName: company.name,
    printed: dayWords(today),
    unitSystem: company.unitSystem,
    figures,
    site: bed.site ?? { label: 'Tank in the workshop', street: null, town: null, accessNotes: null },
    softenerLabel: bed.softener?.label ?? null,
    tank: bed.tank,
    bedSign: bed.bedId.slice(-6),
    resinKind: knownResinKind(bed.resinKind),
    resinVolumeFt3: bed.volumeFt3,
    gravelLb: bed.gravelLb,
    tubeCutIn: bed.tubeCutIn,
    bedBegan: beganWords(bed),
    valve: bed.valve && { ...bed.valve, card: figures.valves.find((card) => card.id === bed.valve?.cardId) ?? null },
    water: {
      ...bed.water,
      disinfectant:
        bed.water.disinfectant === null || bed.water.disinfectant === 'unknown' ? null : disinfectantLines[bed.water.disinfectant],
    },
    prices: { currency: company.currency, prices },
    shelf,
  }
}
