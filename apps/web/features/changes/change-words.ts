import type { AuditRow } from '@almanac/contract/audit'
import { archiveReasons, archiveReasonWords } from '@almanac/records/archive-reason'
import { auditFieldWord } from '@almanac/records/audit-words'
import type { Display } from '@almanac/units/display'
import { formatDay } from '@almanac/units/format-day'
import { showNumber } from '@almanac/units/format-number'
import { figureName, figureWords } from '@/client/figure-words'

const DAY = /^\d{4}-\d{2}-\d{2}$/
const ID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i

/** A stored value as people read it; null for what names a record or is too much for a line. */
function valueWords(value: unknown, display: Display): string | null {
  if (value === null) return 'not recorded'
  if (typeof value === 'number') return showNumber(value, 3, display)
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (typeof value === 'string') return ID.test(value) ? null : DAY.test(value) ? formatDay(value, display) : value
  const amount = value as { value?: unknown; unit?: unknown }
  if (typeof amount.value === 'number' && typeof amount.unit === 'string') return `${showNumber(amount.value, 3, display)} ${amount.unit}`
  return null
}

/** One change in words: "people served: 2 → 4"; the fact alone where its values are personal, name a record or fill more than a line. */
function changeWords({ field, known, from, to }: AuditRow['changes'][number], display: Display): string {
  const [was, is] = [valueWords(from, display), valueWords(to, display)]
  const word = auditFieldWord(field)
  return known && was !== null && is !== null ? `${word}: ${was} → ${is}` : word
}

/** What was changed, in words. The company's own figures and settings have words of their own. */
export function changesWords({ entity, changes }: Pick<AuditRow, 'entity' | 'changes'>, display: Display): string[] {
  if (entity !== 'firm-figure' && entity !== 'company-settings') return changes.map((one) => changeWords(one, display))
  return changes.map(
    ({ field, from, to }) =>
      `${figureName(field, display, to ?? from)}: ${figureWords(field, from, display)} → ${figureWords(field, to, display)}`,
  )
}

/** Why it was changed: an archive's reason by its words, what a person typed in quotes. */
export function reasonWords({ operation, note }: Pick<AuditRow, 'operation' | 'note'>): string[] {
  if (note === null) return []
  const reason = operation.endsWith(': archived') ? archiveReasons.find((one) => one === note) : undefined
  return [reason ? archiveReasonWords[reason] : `“${note}”`]
}
