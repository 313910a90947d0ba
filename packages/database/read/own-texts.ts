import type { Channel } from '@almanac/records/channel'
import type { Language } from '@almanac/records/language'
import { inCompany, type Scope } from '../in-company.ts'

/** A company's own texts of its reminders, as they are stored; the standard one's row has no words. */
export async function readOwnTexts(scope: Pick<Scope, 'companyId'>) {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const { locale } = await tx.company.findUniqueOrThrow({ where: { id: companyId }, select: { locale: true } })
    const rows = await tx.ownText.findMany({ where: { companyId } })
    const texts = rows.map(({ channel, language, version, subject, body }) => ({
      ...{ channel: channel as Channel, language: language as Language, version },
      own: subject === null || body === null ? null : { subject, body },
    }))
    return { locale, texts }
  })
}
