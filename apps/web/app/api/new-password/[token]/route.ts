import { SetPassword } from '@almanac/contract/people'
import { setPasswordByLink } from '@almanac/identity/new-password'
import { asOnce } from '@/server/one-time-route'

export const dynamic = 'force-dynamic'

/** Sets a new password; all sessions end, and this browser is signed in. */
export async function POST(request: Request, { params }: { params: Promise<{ token: string }> }) {
  return asOnce(request, 'password', (await params).token, SetPassword, async ({ link }, { password }) => ({
    email: await setPasswordByLink(link, password),
    password,
  }))
}
