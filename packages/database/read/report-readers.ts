import type { ReportReader, ReportReaders } from '@almanac/contract/reports'
import { oneOf } from '@almanac/records/choices'
import type { ContactRole } from '@almanac/records/contact-role'
import { contactRoles } from '@almanac/records/contact-role'
import { type Language, languages } from '@almanac/records/language'
import type { MessageState } from '@almanac/records/message-state'
import { AppError, notFound } from '@almanac/runtime/errors'
import type { Tx } from '../client.ts'
import { holderOn } from './service-report.ts'

const order = (role: string) => contactRoles.findIndex((one) => one === role)

/** A contact with what decides whether a mail may go to them: consent, the address that mail came back from, and what went before. */
export type FoundReader = Omit<ReportReader, 'refusal'> & {
  language: Language | null
  deadEmail: string | null
  agreed: boolean
  mailed: readonly MessageState[]
}

/**
 * Who may get the report of a closed visit: the contacts of whoever held the site that day, for that site or for all of theirs, the payer first. Somebody who moved in
 * since learns nothing of it. Not found for another company's visit; one that isn't closed has no report.
 */
export async function findReaders(
  tx: Tx,
  companyId: string,
  visitId: string,
): Promise<Omit<ReportReaders, 'readers'> & { readers: FoundReader[] }> {
  const visit = await tx.visit.findUnique({
    where: { companyId_id: { companyId, id: visitId } },
    select: { state: true, crewDay: { select: { day: true } }, job: { select: { siteId: true } } },
  })
  if (!visit || visit.state === 'offered') throw notFound('visit')
  if (visit.state !== 'closed') throw new AppError('conflict', 'This visit isn’t closed out yet, so it has no report. Nothing was sent.')
  const { siteId } = visit.job
  const { customerId } = await holderOn(tx, companyId, siteId, visit.crewDay.day)
  const contacts = customerId
    ? await tx.contact.findMany({
        where: { companyId, customerId, archivedAt: null, OR: [{ siteId: null }, { siteId }] },
        include: {
          consents: { where: { channel: 'email' } },
          messages: { where: { visitId }, orderBy: [{ createdAt: 'desc' }, { id: 'desc' }] },
        },
        orderBy: { id: 'asc' },
      })
    : []
  return {
    visitId,
    coming: await tx.picture.count({ where: { companyId, visitId, state: 'coming' } }),
    readers: contacts
      .sort((a, b) => order(a.role) - order(b.role))
      .map(({ id, name, role, email, deadEmail, language, consents, messages: [last, ...before] }) => ({
        ...{ contactId: id, name, role: role as ContactRole, email, language: oneOf(languages, language) },
        ...{ deadEmail, agreed: consents.some((one) => one.granted) },
        mailed: [...(last ? [last] : []), ...before].map((one) => one.state as MessageState),
        last: last
          ? {
              ...{ messageId: last.id, state: last.state as MessageState, address: last.address, kept: last.fileState === 'stored' },
              at: (last.settledAt ?? last.createdAt).toISOString(),
            }
          : null,
      })),
  }
}
