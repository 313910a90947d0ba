import type { ImportField } from './fields.ts'
import type { GatheredCell } from './gather-cells.ts'
import type { RowProblem } from './import-types.ts'

/** Where firms write such things. */
const FIELDS: readonly ImportField[] = ['customerName', 'contactName', 'notes', 'accessNotes', 'softenerLabel', 'consent', 'phone']

const SILENCE =
  /\bdo(?:es)? not (?:call|contact|phone|ring|disturb|mail|e-?mail|write)\b|\bdon['’]?t (?:call|contact|phone|ring)\b|\bdnc\b|\bno contact\b/i

/** What a note says of a person or a softener that a firm would want to know before it calls; the gravest first. */
const DECISIONS: readonly { pattern: RegExp; reason: string }[] = [
  {
    pattern: /\bdeceased\b|\bpassed away\b|†|\bverstorben\b|\bfallecid[oa]\b/i,
    reason: 'The customer may have died. Brought in as it stands: look at it before anyone calls.',
  },
  {
    pattern:
      /\bmoved (?:out|away|house)\b|\bnew owners?\b|\b(?:house|property|home) (?:was )?sold\b|\bsold (?:the |their )?(?:house|property|home)\b|\bverzogen\b|\bse mud[oó]\b/i,
    reason: 'The customer may have moved. Brought in as it stands: find out who lives there now.',
  },
  {
    pattern:
      /\b(?:unit|softener|system|tank|equipment) (?:was |has been )?(?:removed|taken out|scrapped|disconnected|gone)\b|\bremoved (?:the )?(?:unit|softener|system)\b|\bno longer (?:has|have|uses?)\b|\bout of service\b|\babgebaut\b/i,
    reason: 'The softener may be gone. Brought in as it stands: archive it if it is.',
  },
  { pattern: SILENCE, reason: 'The customer asked not to be contacted. Kept as a no to every kind of message.' },
]

/** The words of a row that ask a person to decide, each kind once, with the cell they stand in. */
export function findDecisions(gathered: ReadonlyMap<ImportField, GatheredCell>): RowProblem[] {
  const cells = FIELDS.flatMap((field) => {
    const cell = gathered.get(field)
    return cell ? [{ field, ...cell }] : []
  })
  return DECISIONS.flatMap(({ pattern, reason }) => {
    for (const { field, column, text } of cells) {
      const found = pattern.exec(text)
      if (found) return [{ kind: 'decide' as const, column, field, value: around(text, found.index, found[0].length), reason }]
    }
    return []
  })
}

/** True where a row says that its customer does not want to be contacted: a no outranks a yes in another column. */
export function asksForSilence(gathered: ReadonlyMap<ImportField, GatheredCell>): boolean {
  return FIELDS.some((field) => SILENCE.test(gathered.get(field)?.text ?? ''))
}

const SHOWN = 40

/** The words with what stands about them. */
function around(text: string, at: number, length: number): string {
  const [from, to] = [Math.max(0, at - SHOWN), Math.min(text.length, at + length + SHOWN)]
  return `${from > 0 ? '…' : ''}${text.slice(from, to)}${to < text.length ? '…' : ''}`
}
