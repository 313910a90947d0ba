import { decideDayOrder } from './decide-day-order.ts'
import { describeField, type ImportField } from './fields.ts'
import type { BareGroup } from './hardness-by-supply.ts'
import type { ColumnJudgement } from './judge-column.ts'
import { concentrationUnitIn } from './read-concentration.ts'
import { hardnessUnitIn, MOST_BARE_GRAINS } from './read-hardness.ts'
import { readPlainNumber } from './read-number.ts'
import { resinVolumeUnitIn } from './read-resin.ts'
import { headerWords } from './score-header.ts'
import type { ColumnSuggestion, Confidence } from './suggestion-types.ts'

/** The suggestion for one column once its field is known: confidence, reason, unit and order of dates, and what a person must be asked. */
export function settleColumn(judgement: ColumnJudgement, field: ImportField | null, groups: readonly BareGroup[] = []): ColumnSuggestion {
  const score = field === null ? 0 : (judgement.scores.get(field) ?? 0)
  const suggestion: ColumnSuggestion = {
    column: judgement.column,
    header: judgement.header,
    field,
    confidence: confidenceOf(field, score),
    reason: reasonFor(judgement, field),
    ask: null,
    examples: [...new Set(judgement.values)].slice(0, 3),
  }
  return field === null ? suggestion : { ...suggestion, ...particulars(field, judgement, groups) }
}

function confidenceOf(field: ImportField | null, score: number): Confidence {
  if (field === null) return 'none'
  if (score >= 0.85) return 'sure'
  return score >= 0.65 ? 'likely' : 'guess'
}

function reasonFor(judgement: ColumnJudgement, field: ImportField | null): string {
  if (judgement.isProblemColumn) return 'Added by the list of rows to fix; left out.'
  if (field === null) {
    if (judgement.values.length === 0) return 'The column is empty.'
    if (judgement.looksLikeDays) return 'It has dates, but nothing says what for. Choose a field or leave it out.'
    const wanted = [...judgement.scores].sort((a, b) => b[1] - a[1])[0]
    if (wanted && wanted[1] >= 0.6)
      return `Another column fits ${describeField(wanted[0]).title.toLowerCase()} better. Choose a field or leave it out.`
    return judgement.header
      ? `"${judgement.header}" isn’t a field we know, and the contents don’t show one.`
      : 'The contents don’t show what it is.'
  }
  const { title } = describeField(field)
  const from = judgement.from.get(field)
  if (judgement.contradicted && judgement.contradicted !== field && from === 'contents') {
    return `The header says "${judgement.header}", but the contents look like ${title.toLowerCase()}.`
  }
  if (from === 'header')
    return judgement.values.length === 0
      ? `The header "${judgement.header}" says so; the column is empty.`
      : `The header "${judgement.header}" says so.`
  return from === 'both' ? `The header "${judgement.header}" and the contents agree.` : `The contents look like ${title.toLowerCase()}.`
}

function particulars(field: ImportField, judgement: ColumnJudgement, groups: readonly BareGroup[]): Partial<ColumnSuggestion> {
  if (field === 'installed' || field === 'bedBegan' || field === 'lastSeen' || field === 'notes') return dayOrderOf(field, judgement)
  if (field === 'hardness') return hardnessUnitOf(judgement, groups)
  if (field === 'iron' || field === 'chlorine') {
    const unit = unitInHeader(judgement.header, concentrationUnitIn)
    return unit ? { concentrationUnit: unit } : {}
  }
  if (field !== 'resinVolume' && field !== 'tank') return {}
  const unit = unitInHeader(judgement.header, resinVolumeUnitIn)
  if (unit) return { volumeUnit: unit }
  const bare = bareNumbers(judgement.values).filter((value) => field === 'resinVolume' || value < 100)
  if (bare.length === 0) return {}
  const guess = bare.every((value) => value <= 10) ? ('ft3' as const) : bare.every((value) => value >= 10) ? ('L' as const) : null
  return guess
    ? { volumeUnit: guess, ask: `Numbers without a unit look like ${guess === 'ft3' ? 'cubic feet' : 'litres'} of resin. Is that right?` }
    : { ask: 'Are numbers without a unit cubic feet or liters of resin?' }
}

function dayOrderOf(field: ImportField, judgement: ColumnJudgement): Partial<ColumnSuggestion> {
  const finding = decideDayOrder(judgement.values)
  const mustAsk = finding.order === 'undecided' && finding.ambiguousCount > 0 && field !== 'notes'
  const ask = mustAsk
    ? `${finding.reason} ${finding.ambiguousCount === 1 ? 'One date' : `${finding.ambiguousCount} dates`} could be read either way. Which comes first?`
    : null
  return { dayOrder: finding.order, ask }
}

/** Bare numbers up to 60 look like grains unless their supply's other rows say otherwise, numbers above 60 can only be mg/L, and a column may hold both; a person confirms it. */
function hardnessUnitOf(judgement: ColumnJudgement, groups: readonly BareGroup[]): Partial<ColumnSuggestion> {
  const unit = unitInHeader(judgement.header, hardnessUnitIn)
  if (unit) return { hardnessUnit: unit }
  const bare = bareNumbers(judgement.values).sort((a, b) => a - b)
  if (bare.length === 0) return {}
  const [grains, large] = [bare.filter((value) => value <= MOST_BARE_GRAINS), bare.filter((value) => value > MOST_BARE_GRAINS)]
  if (groups.some((group) => group.unit === 'mg/L'))
    return {
      hardnessUnit: 'each-by-size',
      ask: `Of the numbers without a unit, ${groups.slice(0, GROUPS_ASKED).map(ofSupply).join(', ')}, as other rows there say. The rest are read as what fits their size. Is that right?`,
    }
  if (grains.length > 0 && large.length > 0)
    return {
      hardnessUnit: 'each-by-size',
      ask: `Of the numbers without a unit, ${groupOf(grains)} look like grains per gallon, ${groupOf(large)} like mg/L. Each is read as what fits its size. Is that right?`,
    }
  if (grains.length === 0)
    return { hardnessUnit: 'mg/L', ask: `Numbers without a unit look like mg/L (ppm): ${groupOf(bare)}. Is that right?` }
  return { hardnessUnit: 'gpg', ask: `Numbers without a unit look like grains per gallon: ${groupOf(bare)}. Is that right?` }
}

const GROUPS_ASKED = 4
const ofSupply = ({ supply, unit, count }: BareGroup) => `${count} on ${supply} look like ${unit === 'gpg' ? 'grains per gallon' : 'mg/L'}`

/** "506, most often 19 (312 times)": of the rows that were looked at. */
function groupOf(values: readonly number[]): string {
  const [most = []] = [...Map.groupBy(values, (value) => value).values()].sort((a, b) => b.length - a.length)
  return most.length > 1 ? `${values.length}, most often ${most[0]} (${most.length} times)` : `${values.length}`
}

function bareNumbers(values: readonly string[]): number[] {
  return values.map(readPlainNumber).filter((value) => value !== null)
}

/** A unit named in a header, as "(gpg)", "mg/L" or "cu ft": tried for every run of up to three words. */
function unitInHeader<T>(header: string, unitIn: (text: string) => T | null): T | null {
  return unitInWords(header.split(/[\s()[\],:;_-]+/), unitIn) ?? unitInWords(headerWords(header), unitIn)
}

function unitInWords<T>(header: readonly string[], unitIn: (text: string) => T | null): T | null {
  const words = header.filter((word) => word !== '')
  for (let length = 3; length >= 1; length--) {
    for (let start = 0; start + length <= words.length; start++) {
      const unit = unitIn(words.slice(start, start + length).join(' '))
      if (unit !== null) return unit
    }
  }
  return null
}
