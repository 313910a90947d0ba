import { cleanCell, isSilent } from './clean-cell.ts'
import type { ImportField } from './fields.ts'
import { isProblemColumn } from './problem-file.ts'
import { canBe, looksLikeDay, tellingFields, tells } from './score-contents.ts'
import { scoreHeader } from './score-header.ts'

/** What header and contents of one column say, before the columns are compared. */
export interface ColumnJudgement {
  column: number
  header: string
  /** Its values that say something, from the sampled rows. */
  values: string[]
  /** How strongly each field is supported, 0 to 1. */
  scores: Map<ImportField, number>
  /** Where the support comes from. */
  from: Map<ImportField, 'header' | 'contents' | 'both'>
  /** The field the header named although the contents do not fit it. */
  contradicted: ImportField | null
  looksLikeDays: boolean
  isProblemColumn: boolean
}

/** Below this share of fitting cells a header is not believed. Firms' columns are messy, so a third of slips passes. */
const FITTING_SHARE = 0.35
const TELLING_SHARE = 0.6
/** Fields that take any text are named by a header that means something else as often ("Softener" over tank sizes): contents of a form of their own outrank it. */
const LOOSE: ReadonlySet<ImportField> = new Set(['softenerLabel', 'tankPosition', 'contactName', 'referenceNumber', 'supplyName'])
const PLAIN_FORM: ReadonlySet<ImportField> = new Set(['tank', 'phone', 'email'])

/** Judges one column by its header and by the rows sampled. */
export function judgeColumn(column: number, header: string, rows: readonly (readonly string[])[], today: string): ColumnJudgement {
  const values = rows.map((row) => cleanCell(row[column])).filter((value) => !isSilent(value))
  const judgement: ColumnJudgement = {
    column,
    header: cleanCell(header),
    values,
    scores: new Map(),
    from: new Map(),
    contradicted: null,
    looksLikeDays: false,
    isProblemColumn: isProblemColumn(header),
  }
  if (judgement.isProblemColumn) return judgement
  judgement.looksLikeDays =
    values.length > 0 && share(values, (value) => !/^\d{5,}$/.test(value) && looksLikeDay(value, today)) >= TELLING_SHARE
  let best: { field: ImportField; score: number } | null = null
  for (const [field, score] of scoreHeader(header)) {
    const fitting = values.length === 0 ? 1 : share(values, (value) => canBe(field, value, today))
    const believed = fitting < FITTING_SHARE ? score * 0.3 : score * (0.85 + 0.15 * fitting)
    if (fitting < FITTING_SHARE && score >= 0.6 && (best === null || score > best.score)) judgement.contradicted = field
    if (best === null || score > best.score) best = { field, score }
    judgement.scores.set(field, believed)
    judgement.from.set(field, 'header')
  }
  addContents(judgement)
  return judgement
}

function addContents(judgement: ColumnJudgement): void {
  const { values, scores, from } = judgement
  if (values.length === 0) return
  const headerSpeaks = Math.max(0, ...scores.values()) >= 0.6
  for (const field of tellingFields) {
    if (judgement.looksLikeDays && field !== 'notes') continue
    const told = share(values, (value) => tells(field, value))
    if (told < TELLING_SHARE) continue
    const named = scores.get(field)
    // Names and long texts look alike in several columns, so they count for less than an address or a size.
    const weight = field === 'customerName' || field === 'notes' ? 0.6 : field === 'street' || field === 'postcode' ? 0.75 : 0.85
    const loose = [...scores].filter(([one]) => LOOSE.has(one))
    if (PLAIN_FORM.has(field) && loose.length > 0 && loose.every(([, score]) => score > (named ?? 0))) {
      for (const [one, score] of loose) scores.set(one, score * 0.5)
      if (loose.some(([, score]) => score >= 0.6)) judgement.contradicted = loose[0]?.[0] ?? null
      scores.set(field, weight * told)
      from.set(field, 'contents')
      continue
    }
    const byContents = headerSpeaks ? Math.min(weight, 0.5) * told : weight * told
    if (named === undefined || byContents > named) {
      scores.set(field, Math.max(byContents, named ?? 0))
      from.set(field, named === undefined ? 'contents' : 'both')
    } else {
      scores.set(field, Math.min(1, named + 0.15 * told))
      from.set(field, 'both')
    }
  }
}

function share(values: readonly string[], test: (value: string) => boolean): number {
  return values.filter(test).length / values.length
}
