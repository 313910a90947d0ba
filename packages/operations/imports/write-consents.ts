import type { Tx } from '@almanac/database/client'
import { upsertConsents } from '@almanac/database/sql/import-consents'
import { newId } from '@almanac/runtime/ids'
import type { ImportedFact, ImportedFacts } from './facts.ts'
import type { ConsentPatch } from './plan-types.ts'

/** The facts of a contact that live in rows of their own, with the channel of each. */
export const CONSENTS: Record<string, string> = {
  consentEmail: 'email',
  consentPhone: 'phone',
  consentText: 'text',
  consentLetter: 'letter',
}

/** Writes what a file says about channels; an answer that stands already keeps its day. */
export async function writeConsents(tx: Tx, companyId: string, consents: readonly ConsentPatch[], today: string): Promise<void> {
  if (consents.length > 0)
    await upsertConsents(
      tx,
      companyId,
      consents.map((one) => ({ ...one, id: newId() })),
      today,
    )
}

/** The rows of a new contact's answers. A silent file makes none: silence is no yes. */
export function consentRows(companyId: string, contactId: string, facts: ImportedFacts, today: string) {
  return Object.entries(CONSENTS).flatMap(([column, channel]) => {
    const granted = (facts[column] as ImportedFact | undefined)?.[column]
    if (typeof granted !== 'boolean') return []
    return [{ companyId, id: newId(), contactId, channel, granted, source: 'import', sinceDay: today }]
  })
}
