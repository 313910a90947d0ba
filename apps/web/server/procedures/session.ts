import { now } from '@almanac/runtime/clock'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import 'server-only'
import { readFirmFigures } from '@almanac/database/read/firm-figures'
import { askNewEmail } from '@almanac/identity/change-email'
import { listPasskeys, removePasskey } from '@almanac/identity/own-passkeys'
import { setLanguage } from '@almanac/identity/people'
import { permissionsOf } from '@almanac/identity/permissions'
import { endSession, listSessions } from '@almanac/identity/sessions'
import { switchCompany } from '@almanac/identity/switch-company'
import type { Who } from '@almanac/identity/who'
import { acceptedMail, mailWorks } from '@almanac/messages/send-mail'
import { newEmailMail } from '@almanac/messages/ways-in-mail'
import { config } from '@almanac/runtime/config'
import { AppError } from '@almanac/runtime/errors'
import { mergeFigures } from '@almanac/softener/firm/merge-figures'
import { wordsIn } from '@almanac/words/words-in'
import { anyMember } from '../procedure.ts'
import { newEmailPath } from '../public-paths.ts'

/** What the screens know of the signed-in person. */
export async function meOf(who: Who) {
  const figures = await readFirmFigures({ companyId: who.company.id })
  const inUse = figures.filter((row) => row.inUse)
  return {
    person: who.person,
    company: who.company,
    role: who.role,
    permissions: permissionsOf(who.role),
    companies: who.companies,
    today: dayIn(who.company.timeZone, now()),
    figures,
    own: inUse.length > 0 ? mergeFigures(inUse).figures : null,
  }
}

export const session = {
  switchCompany: anyMember().session.switchCompany.handler(async ({ context, input }) => {
    await switchCompany(context.who, input.companyId)
    return { companyId: input.companyId }
  }),
  setLanguage: anyMember().session.setLanguage.handler(async ({ context, input }) => {
    await setLanguage(context.who.person.id, input.language)
    return input
  }),
  changeEmail: anyMember().session.changeEmail.handler(async ({ context: { who, log }, input }) => {
    const link = await askNewEmail(who, input, mailWorks())
    if (!link) return { sentTo: null }
    const mail = newEmailMail(wordsIn(who.company.locale, 'wayInMail'), {
      name: who.person.name,
      url: `${config().PUBLIC_URL}${newEmailPath(link.token)}`,
    })
    if (await acceptedMail({ to: input.email, ...mail }, log)) return { sentTo: input.email }
    throw new AppError('unavailable', 'The mail server did not take the message, so nothing was changed. Try again in a few minutes.')
  }),
  list: anyMember().session.list.handler(({ context }) => listSessions(context.who)),
  end: anyMember().session.end.handler(async ({ context, input }) => {
    await endSession(context.who, input.sessionId)
    return { ended: input.sessionId }
  }),
  passkeys: anyMember().session.passkeys.handler(({ context }) => listPasskeys(context.who)),
  removePasskey: anyMember().session.removePasskey.handler(async ({ context, input }) => {
    await removePasskey(context.who, input.passkeyId)
    return { removed: input.passkeyId }
  }),
}
