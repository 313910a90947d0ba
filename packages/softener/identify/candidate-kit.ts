import { formatList } from '@almanac/units/format-list'
import type { Result } from '@almanac/units/result'
import type { FirmFigures } from '../firm/firm-figures.ts'
import { bagName } from '../kit/bag-plan.ts'
import type { RebedKit } from '../kit/kit-types.ts'
import { rebedKit } from '../kit/rebed-kit.ts'
import type { Speaking } from '../kit/speaking.ts'
import type { TankClues } from './clue-types.ts'

/** What a size means for a rebed: the few lines of its kit that tell sizes apart. */
export type CandidateKit = {
  resinFt3: number
  bags: string
  gravelLb: number
  tubeLengthIn: number
  crewSize: number
  fullTankLb: number
}

type KitFigures = Pick<FirmFigures, 'tanks' | 'bagSizes' | 'gravelFromFt3'>

/** The kit of a size, with what the label says of rating and filling; refuses what no kit can be made for. */
export function candidateKit(
  size: { diameterIn: number; heightIn: number },
  clues: TankClues,
  figures: KitFigures,
  speaking: Speaking,
): Result<CandidateKit> {
  const { nominalGrains, resinFt3 } = clues
  const kit = rebedKit({ ...size, nominalGrains, resinVolumeFt3: resinFt3, openingIn: clues.openingIn, figures, ...speaking })
  return kit.ok ? { ...kit, value: inShort(kit.value, speaking) } : kit
}

function inShort(kit: RebedKit, { words, display }: Speaking): CandidateKit {
  const { resinFt3, gravelLb, tubeLengthIn, crewSize, fullTankLb } = kit
  const bags = formatList(
    kit.bagPlan.bags.map((bag) => `${bag.count} × ${bagName(bag.volumeFt3, words)}`),
    display,
  )
  return { resinFt3, bags, gravelLb, tubeLengthIn, crewSize, fullTankLb }
}

/** Whether the sizes that may still be call for other materials or another crew. */
export function kitsDiffer(kits: readonly CandidateKit[]): boolean {
  const first = kits[0]
  if (first === undefined) return false
  return kits.some(
    (kit) =>
      Math.abs(kit.resinFt3 - first.resinFt3) > 0.02 || Math.abs(kit.gravelLb - first.gravelLb) > 5 || kit.crewSize !== first.crewSize,
  )
}
