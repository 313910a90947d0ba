import type { Letterhead } from '@almanac/records/letterhead'
import type { Tx } from '../client.ts'
import { inCompany, type Scope } from '../in-company.ts'

/** What heads the company's papers, inside a transaction. */
export async function letterheadIn(tx: Tx, companyId: string): Promise<Letterhead> {
  const { name: firmName, telephone } = await tx.company.findUniqueOrThrow({
    where: { id: companyId },
    select: { name: true, telephone: true },
  })
  const row = await tx.companySettings.findUnique({
    where: { companyId },
    select: { id: true, headAddress: true, headMail: true, headLicence: true, logoWidth: true, logoHeight: true },
  })
  const logo = row?.logoWidth && row.logoHeight ? { id: row.id, width: row.logoWidth, height: row.logoHeight } : null
  const { headAddress: address = null, headMail: mail = null, headLicence: licence = null } = row ?? {}
  return { firmName, telephone, address, mail, licence, logo }
}

/** What heads the company's papers. */
export const readLetterhead = (scope: Pick<Scope, 'companyId'>): Promise<Letterhead> =>
  inCompany(scope, (tx) => letterheadIn(tx, scope.companyId))
