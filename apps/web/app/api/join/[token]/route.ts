import { Join } from '@almanac/contract/people'
import { acceptInvitation } from '@almanac/identity/invitations'
import { showCompany } from '@almanac/identity/switch-company'
import { signInAsColleague } from '@almanac/operations/crews/colleague-sign-in'
import { AppError } from '@almanac/runtime/errors'
import { asOnce } from '@/server/one-time-route'

export const dynamic = 'force-dynamic'

/** Lets an invited person in: whoever is signed in, or someone new, who is signed in then. */
export async function POST(request: Request, { params }: { params: Promise<{ token: string }> }) {
  return asOnce(request, 'invitation', (await params).token, Join, async ({ link, person: signedIn }, { person }) => {
    if (!signedIn && !person) throw new AppError('invalid', 'You are not signed in any more. Nothing was saved; load this page again.')
    const personId = await acceptInvitation(link, person ?? { personId: signedIn?.id ?? '' })
    const companyId = link.company?.id ?? ''
    const { colleagueId, role } = link
    const name = person?.name ?? signedIn?.name ?? ''
    // Whoever goes out stands on day sheets, without anybody having to add them once more.
    if (colleagueId || role === 'technician') await signInAsColleague({ companyId, personId }, { commandId: link.id, colleagueId, name })
    if (person) return person
    if (signedIn) await showCompany(signedIn, companyId)
    return null
  })
}
