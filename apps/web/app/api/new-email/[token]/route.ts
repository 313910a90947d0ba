import { setEmailByLink } from '@almanac/identity/change-email'
import { acceptedMail } from '@almanac/messages/send-mail'
import { emailChangedMail } from '@almanac/messages/ways-in-mail'
import { wordsIn } from '@almanac/words/words-in'
import * as z from 'zod'
import { browserLanguage } from '@/server/browser-language'
import { asOnce } from '@/server/one-time-route'

export const dynamic = 'force-dynamic'

/** Takes a new email by the link that went to it, and tells whoever reads at the old one. */
export async function POST(request: Request, { params }: { params: Promise<{ token: string }> }) {
  return asOnce(request, 'email', (await params).token, z.object({}), async ({ link, log, headers }) => {
    const before = await setEmailByLink(link)
    void acceptedMail({ to: before, ...emailChangedMail(wordsIn(browserLanguage(headers), 'wayInMail')) }, log)
    return null
  })
}
