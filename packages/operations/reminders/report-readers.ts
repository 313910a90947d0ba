import type { ReportReader, ReportReaders } from '@almanac/contract/reports'
import type { Tx } from '@almanac/database/client'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { findReaders } from '@almanac/database/read/report-readers'
import type { Language } from '@almanac/records/language'
import { whyNotMailed } from '@almanac/service-rules/messages/why-not-mailed'

/** A reader with the language that a mail to them speaks. */
export type Reader = ReportReader & { language: Language | null }
type Readers = Omit<ReportReaders, 'readers'> & { readers: Reader[] }

/** Who may get the report of a closed visit, each with why it can't go to them. */
export async function readersIn(tx: Tx, companyId: string, visitId: string): Promise<Readers> {
  const found = await findReaders(tx, companyId, visitId)
  return {
    ...found,
    readers: found.readers.map(({ deadEmail, agreed, mailed, ...reader }) => ({
      ...reader,
      refusal: whyNotMailed({ email: reader.email, deadEmail, agreed, mailed }),
    })),
  }
}

/** The same for the page that asks. */
export const readReportReaders = (scope: Pick<Scope, 'companyId'>, visitId: string): Promise<Readers> =>
  inCompany(scope, (tx) => readersIn(tx, scope.companyId, visitId))
