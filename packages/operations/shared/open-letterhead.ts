import { inCompany, type Scope } from '@almanac/database/in-company'
import { letterheadIn } from '@almanac/database/read/letterhead'
import { fileStore } from '@almanac/files/file-store'
import type { PrintedHead } from '@almanac/records/letterhead'

/** What heads the company's papers, with the logo's bytes; without the logo where the store has lost its file: a paper is printed all the same. */
export async function openLetterhead(scope: Pick<Scope, 'companyId'>): Promise<PrintedHead> {
  const { companyId } = scope
  const { logo, ...head } = await inCompany(scope, (tx) => letterheadIn(tx, companyId))
  const png = logo && (await fileStore().get({ companyId, id: logo.id }))
  return { ...head, logo: logo && png ? { png, width: logo.width, height: logo.height } : null }
}
