import { inCompany, type Scope } from '../in-company.ts'

/** More than a morning's letters are printed in a second file, once these are marked as sent. */
const MOST = 200

/** The approved letters, in the order they were approved. */
export async function readLettersToPrint({ companyId }: Pick<Scope, 'companyId'>) {
  return inCompany({ companyId }, async (tx) => {
    return tx.message.findMany({
      where: { companyId, state: 'approved', channel: 'letter' },
      select: { address: true, subject: true, body: true, contact: { select: { language: true } } },
      orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
      take: MOST,
    })
  })
}
