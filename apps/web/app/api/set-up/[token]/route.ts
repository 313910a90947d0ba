import { SetUp } from '@almanac/contract/set-up'
import { foundCompany } from '@almanac/identity/set-up'
import { showCompany } from '@almanac/identity/switch-company'
import { AppError } from '@almanac/runtime/errors'
import { checkNewCompany } from '@/server/new-company'
import { asOnce } from '@/server/one-time-route'

export const dynamic = 'force-dynamic'

/** Founds a company: its settings and its owner, who is signed in then. */
export async function POST(request: Request, { params }: { params: Promise<{ token: string }> }) {
  return asOnce(request, 'set-up', (await params).token, SetUp, async ({ link, person }, { company, owner }) => {
    const checked = checkNewCompany(company)
    if (person) {
      const { companyId } = await foundCompany(link, checked, { personId: person.id })
      await showCompany(person, companyId)
      return null
    }
    if (!owner) throw new AppError('invalid', 'You are not signed in any more. Nothing was saved; load this page again.')
    await foundCompany(link, checked, owner)
    return owner
  })
}
