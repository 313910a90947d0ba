import 'server-only'
import { invite, listInvitations, withdrawInvitation } from '@almanac/identity/invitations'
import { changeRole, endAccess, endMemberSession, listMembers, makePasswordLink } from '@almanac/identity/members'
import { acceptedMail, mailWorks } from '@almanac/messages/send-mail'
import { invitationMail } from '@almanac/messages/ways-in-mail'
import { colleagueToInvite } from '@almanac/operations/crews/colleague-sign-in'
import { config } from '@almanac/runtime/config'
import { AppError } from '@almanac/runtime/errors'
import { wordsIn } from '@almanac/words/words-in'
import { can } from '../procedure.ts'
import { joinPath, newPasswordPath } from '../public-paths.ts'

const manage = can('manage:company').people

export const people = {
  list: manage.list.handler(async ({ context: { scope } }) => ({
    members: await listMembers(scope.companyId),
    invitations: await listInvitations(scope.companyId),
    mail: mailWorks(),
  })),
  invite: manage.invite.handler(async ({ context: { who, scope, log }, input: { byMail, ...given } }) => {
    if (byMail && (!given.email || !mailWorks()))
      throw new AppError(
        'invalid',
        'No mail can be sent without an address and a mail server. Nobody was invited; hand a link over instead.',
      )
    if (given.colleagueId) await colleagueToInvite(scope, given.colleagueId)
    const { token, expiresAt } = await invite(who, { ...given, email: byMail ? given.email : null })
    const path = joinPath(token)
    const until = { expiresAt: expiresAt.toISOString() }
    if (!byMail || !given.email) return { path, sentTo: null, mailFailed: false, ...until }
    const url = `${config().PUBLIC_URL}${path}`
    const words = wordsIn(who.company.locale, 'wayInMail')
    const mail = invitationMail(words, { ...given, by: who.person.name, company: who.company.name, url })
    const sent = await acceptedMail({ to: given.email, ...mail }, log)
    return sent ? { path: null, sentTo: given.email, mailFailed: false, ...until } : { path, sentTo: null, mailFailed: true, ...until }
  }),
  withdraw: manage.withdraw.handler(async ({ context, input }) => {
    await withdrawInvitation(context.who, input.invitationId)
    return { withdrawn: input.invitationId }
  }),
  changeRole: manage.changeRole.handler(async ({ context, input: { personId, role, seen } }) => {
    await changeRole(context.who, personId, role, seen)
    return { personId, role }
  }),
  endAccess: manage.endAccess.handler(async ({ context, input }) => {
    await endAccess(context.who, input.personId)
    return { ended: input.personId }
  }),
  endSession: manage.endSession.handler(async ({ context, input }) => {
    await endMemberSession(context.who, input.sessionId)
    return { ended: input.sessionId }
  }),
  passwordLink: manage.passwordLink.handler(async ({ context, input }) => {
    const { token, expiresAt } = await makePasswordLink(context.who, input.personId)
    return { path: newPasswordPath(token), sentTo: null, mailFailed: false, expiresAt: expiresAt.toISOString() }
  }),
}
