import type { MessageState } from '@almanac/records/message-state'
import type { ReportRefusal } from '@almanac/records/report-mail'

/** A reader as consent, address and what was mailed to them of this visit say. */
export type Reader = { email: string | null; deadEmail: string | null; agreed: boolean; mailed: readonly MessageState[] }

/** States of a mail that is gone for good without having reached anybody: another one is no second one. */
const IN_VAIN: readonly MessageState[] = ['withdrawn', 'refused', 'bounced']

/** Why a report can't be mailed to a reader; null where it can. One that is on its way, arrived or may have is never followed by a second. */
export function whyNotMailed({ email, deadEmail, agreed, mailed }: Reader): Exclude<ReportRefusal, 'no-mail'> | null {
  if (mailed.some((state) => !IN_VAIN.includes(state))) return 'sent'
  if (!email?.trim()) return 'no-address'
  if (email === deadEmail) return 'came-back'
  return agreed ? null : 'no-consent'
}
