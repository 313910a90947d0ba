import { formatTankSize } from '@almanac/units/format'
import { ok, type Result, refuse } from '@almanac/units/result'
import type { FirmFigures } from '../firm/firm-figures.ts'
import type { Speaking } from '../kit/speaking.ts'
import { canBeTank } from '../tanks/tank-geometry.ts'
import { type CandidateKit, candidateKit, kitsDiffer } from './candidate-kit.ts'
import { type ClueProblem, checkClues } from './check-clues.ts'
import type { ClueId, TankClues } from './clue-types.ts'
import type { ClueSpeaking } from './clue-words.ts'
import { type MeasureWorth, measureWorths } from './next-measure.ts'
import { oddClues } from './odd-clues.ts'
import { sizeHypotheses } from './size-hypotheses.ts'
import { groupSizes, type SizeGroup, weighSizes } from './size-posterior.ts'
import { tapeSlip } from './tape-slip.ts'

export type TankCandidate = {
  /** `10x54` for a listed size, `unlisted` for what no row gives. */
  id: string
  listed: boolean
  chance: number
  /** Null where an unlisted tank is not measured well enough to say. */
  diameterIn: number | null
  heightIn: number | null
  label: string
  kit: CandidateKit | null
  /** Why there is no kit, where there is none. */
  kitReason: string | null
}

export type TankIdentity = {
  /** Likeliest first; their chances and `otherChance` add up to 1. */
  candidates: TankCandidate[]
  /** Chance of all sizes too unlikely to be named. */
  otherChance: number
  /** True when the likeliest is almost certain, and nothing hints at a tape read wrongly. */
  settled: boolean
  /** A tape that was likely read wrongly, in a sentence; null where nothing hints at it. */
  slip: string | null
  /** What to ask next, most telling first; empty when settled or when nothing is left to ask. */
  next: MeasureWorth[]
  /** Whether what may still be makes a difference to what is bought and who goes. */
  kitsDiffer: boolean
  usedClues: ClueId[]
  problems: ClueProblem[]
  /** Clues that do not fit the likeliest size: to be measured again. */
  odd: ClueProblem[]
}

/** A size is ordered by from this chance on; our own choice. */
const SETTLED_FROM = 0.95
/** Less likely candidates are not named. */
export const NAMED_FROM = 0.02
/** An unlisted size is told, with its kit, when so much of its chance lies about one size. */
export const KNOWN_FROM = 0.7

export type TankSpeaking = Speaking & ClueSpeaking
export type IdentifyInput = TankSpeaking & {
  clues: TankClues
  figures: Pick<FirmFigures, 'tanks' | 'bagSizes' | 'gravelFromFt3'>
}

/**
 * Which tank it is, from whatever is known of it: every listed size and a grid of unlisted ones weighed by Bayes, with the errors of
 * `CLUE_ERRORS`. Impossible clues are named and left out. Refuses only an empty table.
 */
export function identifyTank({ clues: given, figures, ...speaking }: IdentifyInput): Result<TankIdentity> {
  if (figures.tanks.length === 0) return refuse(speaking.tank('emptyTable'))
  const { clues, used, problems } = checkClues(given, speaking)
  const weighed = weighSizes(sizeHypotheses(figures.tanks), clues)
  const groups = groupSizes(weighed)
  const named = groups.filter((one) => one.chance >= NAMED_FROM)
  const candidates = named.map((group) => candidateOf(group, clues, figures, speaking))
  const best = candidates[0]
  const slip = used.length === 0 ? null : tapeSlip(clues, figures.tanks, speaking)
  const settled = slip === null && (best?.chance ?? 0) >= SETTLED_FROM && best?.diameterIn !== null
  const kits = candidates.flatMap((one) => (one.kit ? [one.kit] : []))
  const value: TankIdentity = {
    candidates,
    otherChance: Math.max(0, 1 - candidates.reduce((sum, one) => sum + one.chance, 0)),
    settled,
    slip: slip?.sentence ?? null,
    next: settled ? [] : measureWorths(weighed, clues),
    kitsDiffer: kitsDiffer(kits),
    usedClues: used,
    problems,
    odd: [...(slip ? [slip] : []), ...oddClues(clues, groups[0]?.best ?? null, speaking)],
  }
  return ok(value, { ...notesOf(used, speaking), missing: used.length === 0 ? [speaking.tank('noClue')] : [] })
}

function candidateOf(group: SizeGroup, clues: TankClues, figures: IdentifyInput['figures'], speaking: TankSpeaking): TankCandidate {
  const row = figures.tanks[group.listed]
  if (row) return named(row, group.chance, true, clues, figures, speaking)
  const size = { diameterIn: Math.round(group.diameterIn * 2) / 2, heightIn: Math.round(group.heightIn) }
  if (group.nearShare >= KNOWN_FROM && canBeTank(size.diameterIn, size.heightIn))
    return named(size, group.chance, false, clues, figures, speaking)
  return {
    ...{ id: 'unlisted', listed: false, chance: group.chance, diameterIn: null, heightIn: null, kit: null },
    label: speaking.tank('unlisted'),
    kitReason: speaking.tank('unlistedKit'),
  }
}

function named(
  { diameterIn, heightIn }: { diameterIn: number; heightIn: number },
  chance: number,
  listed: boolean,
  clues: TankClues,
  figures: IdentifyInput['figures'],
  speaking: TankSpeaking,
): TankCandidate {
  const kit = candidateKit({ diameterIn, heightIn }, clues, figures, speaking)
  const size = formatTankSize(diameterIn, heightIn, speaking.display)
  return {
    ...{ id: listed ? `${diameterIn}x${heightIn}` : 'unlisted', listed, chance, diameterIn, heightIn },
    label: listed ? size : speaking.tank('unlistedSize', { size }),
    kit: kit.ok ? kit.value : null,
    kitReason: kit.ok ? null : kit.reason,
  }
}

function notesOf(used: readonly ClueId[], { tank }: ClueSpeaking) {
  const errors = used.flatMap((clue) => (clue === 'jacket' || clue === 'writtenHeightIn' ? [] : [tank(`error/${clue}`)]))
  return {
    assumptions: [...errors, tank('eachAlone'), tank('sharesAssumed')],
    sources: [tank('bayes'), tank('practice'), tank('memory')],
  }
}
