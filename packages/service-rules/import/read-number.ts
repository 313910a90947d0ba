/**
 * A decimal number as people and spreadsheets write it: "1,234.5", "1 234,5", "0,8", "18". Null where the text is anything else. A single comma followed by exactly
 * three digits groups thousands ("48,000"); any other single comma is a decimal comma.
 */
export function readNumber(text: string): number | null {
  const compact = text.trim().replace(/[\s\u00a0\u202f'’](?=\d{3}(?!\d))/g, '')
  if (/^[+-]?\d{1,3}(,\d{3})+(\.\d+)?$/.test(compact)) return finite(compact.replaceAll(',', ''))
  if (/^[+-]?\d{1,3}(\.\d{3}){2,}(,\d+)?$/.test(compact)) return finite(compact.replaceAll('.', '').replace(',', '.'))
  if (/^[+-]?\d{1,3}(\.\d{3})+,\d+$/.test(compact)) return finite(compact.replaceAll('.', '').replace(',', '.'))
  if (/^[+-]?\d*,\d+$/.test(compact)) return finite(compact.replace(',', '.'))
  if (/^[+-]?(\d+\.?\d*|\.\d+)$/.test(compact)) return finite(compact)
  return null
}

/** A number that may be a fraction of inches or cubic feet: "1½", "1 1/2", "1-1/2", "3/4", "1.5". */
export function readFraction(text: string): number | null {
  const spelt = text
    .trim()
    .replace(/[¼½¾]/g, (sign) => ` ${vulgar[sign]}`)
    .trim()
  const match = /^(?:(\d+)(?:\s+|\s*-\s*))?(\d{1,2})\/(2|3|4|8|16)$/.exec(spelt)
  if (match) return Number(match[1] ?? 0) + Number(match[2]) / Number(match[3])
  return readNumber(spelt)
}

const vulgar: Record<string, string> = { '¼': '1/4', '½': '1/2', '¾': '3/4' }

function finite(text: string): number | null {
  const value = Number(text)
  return Number.isFinite(value) ? value : null
}
