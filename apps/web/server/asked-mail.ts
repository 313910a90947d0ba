import 'server-only'
import { AskMail } from '@almanac/contract/set-up'
import { makeMailedLink } from '@almanac/identity/mailed-links'
import { acceptedMail, mailWorks } from '@almanac/messages/send-mail'
import { passwordMail, setUpMail } from '@almanac/messages/ways-in-mail'
import { config } from '@almanac/runtime/config'
import { AppError } from '@almanac/runtime/errors'
import { wordsIn } from '@almanac/words/words-in'
import { admit } from './admit.ts'
import { BODY_BYTES, jsonWithin } from './body.ts'
import { browserLanguage } from './browser-language.ts'
import type { RequestContext } from './context.ts'
import { QUIET, readBody } from './one-time-route.ts'
import { newPasswordPath, setUpPath } from './public-paths.ts'
import { requestContext } from './request-context.ts'
import { refuseOtherSites } from './route-handler.ts'
import { toWireError } from './wire-error.ts'

/** What a stranger may ask a mail for here: a forgotten password where mail is sent, a company's set-up where strangers may found one. */
export const mayBeMailed = (purpose: AskMail['purpose']): boolean => mailWorks() && (purpose === 'password' || config().FOUNDING === 'open')

async function sendAsked({ headers, address, log }: RequestContext, { purpose, email }: AskMail): Promise<void> {
  if (!mayBeMailed(purpose))
    throw new AppError(
      'not-found',
      'This server sends no such mail. Nothing was sent; ask an owner of your company, or whoever runs the server.',
    )
  const link = await makeMailedLink(purpose, email, address)
  if (!link) return
  const url = (path: string) => `${config().PUBLIC_URL}${path}`
  const words = wordsIn(browserLanguage(headers), 'wayInMail')
  const mail =
    purpose === 'set-up'
      ? setUpMail(words, { url: url(setUpPath(link.token)) })
      : passwordMail(words, { name: link.name, url: url(newPasswordPath(link.token)) })
  // Not waited for: how long the mail takes would tell whether there was somebody to send it to.
  void acceptedMail({ to: email, ...mail }, log)
}

/** Mails the link that somebody asked for, behind the one door. The answer is the same whether or not anybody has that email. */
export async function asStranger(request: Request): Promise<Response> {
  const context = requestContext(request.headers)
  try {
    refuseOtherSites(request)
    return await admit(context, { stranger: 'mail' }, { link: 'mail', method: request.method }, async (admitted) => {
      await sendAsked(admitted, readBody(AskMail, await jsonWithin(request, BODY_BYTES.signIn)))
      return Response.json({ asked: true }, { headers: QUIET })
    })
  } catch (error) {
    const wire = toWireError(error, context)
    return Response.json({ message: wire.message, ...wire.data }, { status: wire.status, headers: QUIET })
  }
}
