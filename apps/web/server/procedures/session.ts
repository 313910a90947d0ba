import { now } from '@almanac/runtime/clock'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import 'server-only'
import { readFirmFigures } from '@almanac/database/read/firm-figures'
import { setLanguage } from '@almanac/identity/people'
import { permissionsOf } from '@almanac/identity/permissions'
import { endSession, listSessions } from '@almanac/identity/sessions'
import { switchCompany } from '@almanac/identity/switch-company'
import type { Who } from '@almanac/identity/who'
import { anyMember } from '../procedure.ts'

/** What the screens know of the signed-in person. */
export async function meOf(who: Who) {
  return {
    person: who.person,
    company: who.company,
    role: who.role,
    permissions: permissionsOf(who.role),
    companies: who.companies,
    today: dayIn(who.company.timeZone, now()),
    figures: await readFirmFigures({ companyId: who.company.id }),
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
  list: anyMember().session.list.handler(({ context }) => listSessions(context.who)),
  end: anyMember().session.end.handler(async ({ context, input }) => {
    await endSession(context.who, input.sessionId)
    return { ended: input.sessionId }
  }),
}
