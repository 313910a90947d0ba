import type { Tx } from '@almanac/database/client'
import { type ReminderCandidate, readCandidatesOf, readToldBefore } from '@almanac/database/read/reminder-candidates'

/** The notice of whoever came after the one who was told: once for each holder of a site. */
const noticeFor = (tenureId: string) => `new-holder-${tenureId}`

export type ForNewHolder = { candidate: ReminderCandidate; notice: string }

/** Beds whose notice went to somebody who has left the site since, with whom one could tell now. A holder who was told, or is about to be, is not asked again. */
export async function forNewHolders(tx: Tx, companyId: string, lastEarlyDay: string): Promise<ForNewHolder[]> {
  const told = await readToldBefore(tx, companyId)
  const tenureOf = new Map(told.map((one) => [one.bedId, one.tenureId]))
  const candidates = await readCandidatesOf(tx, companyId, lastEarlyDay, { bedId: { in: [...tenureOf.keys()] } })
  return candidates.flatMap((candidate) => {
    const tenureId = tenureOf.get(candidate.bedId)
    return tenureId ? [{ candidate, notice: noticeFor(tenureId) }] : []
  })
}
