import { readTank } from '@almanac/service-rules/import/read-tank'
import type { ClueId, TankClues } from '@almanac/softener/identify/clue-types'
import type { AmountDisplay } from '@almanac/units/display'
import { formatTankSize, formatVolumeFt3 } from '@almanac/units/format'
import { formatList } from '@almanac/units/format-list'
import { showWhole } from '@almanac/units/format-number'
import { NOMINAL_GRAINS_PER_FT3 } from '@almanac/units/nominal-grains'
import { readAmount } from '@almanac/units/read-amount'
import type { Words } from '@almanac/words/words'

export type TapeUnit = 'in' | 'cm'
export type Sleeve = '' | 'no' | 'yes'

/** What stands in the fields, as typed. The names are those of the address, so that a page can be sent and opened again. */
export type ClueTexts = {
  label: string
  round: string
  rim: string
  top: string
  across: string
  depth: string
  hole: string
  sleeve: Sleeve
  unit: TapeUnit
}
export type LengthField = 'round' | 'rim' | 'top' | 'across' | 'depth' | 'hole'

export const LENGTH_CLUES: Readonly<Record<LengthField, ClueId>> = {
  round: 'circumferenceIn',
  rim: 'heightIn',
  top: 'heightWithValveIn',
  across: 'diameterIn',
  depth: 'bedDepthIn',
  hole: 'openingIn',
}
const LENGTHS = Object.keys(LENGTH_CLUES) as LengthField[]
const MOST_LETTERS = 200

export function textsOfSearch(search: URLSearchParams, usual: TapeUnit): ClueTexts {
  const text = (key: string) => (search.get(key) ?? '').slice(0, MOST_LETTERS)
  const unit = search.get('unit')
  const sleeve = search.get('sleeve')
  return {
    ...{ label: text('label'), round: text('round'), rim: text('rim'), top: text('top') },
    ...{ across: text('across'), depth: text('depth'), hole: text('hole') },
    sleeve: sleeve === 'yes' || sleeve === 'no' ? sleeve : '',
    unit: unit === 'in' || unit === 'cm' ? unit : usual,
  }
}

/** The address for these texts; what else stands in it stays. */
export function searchOfTexts(texts: ClueTexts, search: URLSearchParams): string {
  const next = new URLSearchParams(search)
  for (const [key, value] of Object.entries(texts)) {
    if (value) next.set(key, value)
    else next.delete(key)
  }
  return next.toString()
}

export type ReadClues = {
  clues: TankClues
  /** What is wrong with the label. */
  labelError?: string
  /** How the label was understood, in words. */
  labelNote?: string
}

/** What cannot be read is left out, and its field says so. Reads every field: lengths in the unit of the tape unless another is typed behind them, the label as people write tanks. */
export function readClues(texts: ClueTexts, speaking: LabelSpeaking): ReadClues {
  const clues: TankClues = {}
  for (const field of LENGTHS) {
    const reading = readAmount('tankMeasure', texts[field], { unit: texts.unit, locale: speaking.display.locale })
    if (reading.state === 'read') Object.assign(clues, { [LENGTH_CLUES[field]]: reading.value })
  }
  if (texts.sleeve !== '') clues.jacket = texts.sleeve === 'yes'
  const label = readLabel(texts.label, speaking)
  return { clues: { ...clues, ...label.clues }, labelError: label.error, labelNote: label.note }
}

type LabelSpeaking = { display: AmountDisplay; words: Words<'whichTank'> }

function readLabel(text: string, { display, words }: LabelSpeaking): { clues: TankClues; error?: string; note?: string } {
  if (text.trim() === '') return { clues: {} }
  const read = readTank(text)
  if (!read.ok) return { clues: {}, error: words('labelUnread', { text: text.trim() }) }
  const { diameterIn, heightIn, nominalGrains, resinVolumeFt3, tankCount, unread } = read.value
  // A rating and a filling that says the same are one clue, not two.
  const own = nominalGrains === null || Math.abs((resinVolumeFt3 ?? 0) * NOMINAL_GRAINS_PER_FT3 - nominalGrains) > 500
  const said = [
    diameterIn !== null && heightIn !== null ? formatTankSize(diameterIn, heightIn, display) : null,
    nominalGrains === null ? null : words('grain', { count: showWhole(nominalGrains, display) }),
    resinVolumeFt3 === null ? null : words('ofResin', { volume: formatVolumeFt3(resinVolumeFt3, display) }),
    tankCount > 1 ? words('perTank', { count: tankCount }) : null,
  ]
  const parts = formatList(
    said.filter((one) => one !== null),
    display,
  )
  return {
    clues: { writtenDiameterIn: diameterIn, writtenHeightIn: heightIn, nominalGrains, resinFt3: own ? resinVolumeFt3 : null },
    note: unread === null ? words('labelRead', { parts }) : words('labelPartRead', { parts, rest: unread }),
  }
}
