import { companyIds } from '@almanac/database/in-company'
import { forgetOldIdentityEvents } from '@almanac/database/sql/identity-events'
import { exportedPeople } from '@almanac/identity/exported-people'
import { makePublicToken, readPublicToken } from '@almanac/identity/public-token'
import { readMailbox } from '@almanac/messages/bounce-mailbox'
import { readBounce } from '@almanac/messages/read-bounce'
import { mailWorks, postMail } from '@almanac/messages/send-mail'
import { postText, textsWork } from '@almanac/messages/send-text'
import { backtestCompany } from '@almanac/operations/forecasts/backtest-company'
import { planRebeds } from '@almanac/operations/forecasts/plan-rebeds'
import { refitCompany, refreshBeds, refreshCompany } from '@almanac/operations/forecasts/refresh-forecasts'
import { sumMonths } from '@almanac/operations/forecasts/sum-months'
import { applyImport } from '@almanac/operations/imports/apply-import'
import { readStoredFile } from '@almanac/operations/imports/read-stored-file'
import { lapseCompanyOffers } from '@almanac/operations/jobs/lapse-offers'
import { workOutPlan } from '@almanac/operations/jobs/work-out-plan'
import { closingOf, eraseCompany } from '@almanac/operations/keeping/erase-company'
import { exportCompany } from '@almanac/operations/keeping/export-company'
import { removeOldExports } from '@almanac/operations/keeping/remove-exports'
import { removeAllPictures } from '@almanac/operations/pictures/remove-all'
import { removeErasedPictures } from '@almanac/operations/pictures/remove-erased'
import { deliverMessages, type Ways } from '@almanac/operations/reminders/deliver-messages'
import { raiseReminders } from '@almanac/operations/reminders/raise-reminders'
import { LINK_PLACE } from '@almanac/operations/reminders/reminder-text'
import { takeBounce } from '@almanac/operations/reminders/take-bounce'
import { now } from '@almanac/runtime/clock'
import { config } from '@almanac/runtime/config'
import { log } from '@almanac/runtime/log'
import type { QueueName, TaskPayloads } from '@almanac/runtime/queues'
import { sendTaskAlone } from '@almanac/runtime/task-queue'

type Handlers = { [Q in QueueName]: (payload: TaskPayloads[Q]) => Promise<void> }

/** Where a message's reminder is answered, and where its reader is taken off the list; made when it goes out and kept nowhere. */
function linksOf({ companyId, reminderId }: { companyId: string; reminderId: string | null }): { link: string; stop: string } {
  if (reminderId === null) return { link: '', stop: '' }
  const token = makePublicToken('reminder', { companyId, id: reminderId })
  const { PUBLIC_URL } = config()
  return { link: `${PUBLIC_URL}/reminder/${token}`, stop: `${PUBLIC_URL}/api/reminder/${token}/stop` }
}

/** What messages go out by here: mails and texts where a server for them is set up. The rest waits in the outbox, to be printed or told. */
const waysOut = (): Ways => ({
  ...(mailWorks() && {
    email: ({ address: to, subject, body, companyName: fromName, id, attachment, ...of }) => {
      const { link, stop } = linksOf(of)
      // RFC 8058, 3.1: one click is for HTTPS addresses alone.
      const unsubscribe = stop.startsWith('https:') ? stop : undefined
      // By it a report that the mail came back says which it was: nobody can make one up for a message that they never got.
      const named = makePublicToken('message', { companyId: of.companyId, id })
      return postMail({ to, subject, text: body.replaceAll(LINK_PLACE, link), fromName, id: named, unsubscribe, attachment }, log())
    },
  }),
  ...(textsWork() && {
    text: ({ address: to, body, companyName: from, companyLocale: locale, id, ...of }) =>
      postText({ id, to, locale, from, text: body.replaceAll(LINK_PLACE, linksOf(of).link) }, log()),
  }),
})

/** Takes in what came back. A mailbox that is away is looked at again in a few minutes. */
async function readBounces(): Promise<void> {
  const take = async (source: Buffer) => {
    const bounce = await readBounce(source)
    const record = bounce && readPublicToken('message', bounce.messageId)
    return record ? takeBounce({ companyId: record.companyId, messageId: record.id }, bounce.status) : false
  }
  await readMailbox(take, now(), log()).catch(({ code, responseStatus }: { code?: string; responseStatus?: string }) =>
    log().error({ code, responseStatus }, 'the mailbox of bounces can’t be read'),
  )
}

/** Everything of a company whose day has come. Broken off between the two, the next night does it again. */
async function eraseAll(companyId: string): Promise<void> {
  await removeAllPictures(companyId)
  await eraseCompany(companyId)
  log().info({ companyId }, 'a closed company was erased')
}

/** What the worker does for each queue. A handler opens its own scope from the payload's company and fails without one. */
export const HANDLERS: Handlers = {
  'read-file': readStoredFile,
  'apply-import': (payload) => applyImport(payload),
  'export-company': (payload) => exportCompany(payload, exportedPeople),
  'forecast-beds': refreshBeds,
  'forecast-company': refreshCompany,
  'refit-company': refitCompany,
  'forecast-months': sumMonths,
  'remove-pictures': removeErasedPictures,
  'lapse-offers': lapseCompanyOffers,
  'backtest-company': backtestCompany,
  'plan-rebeds': planRebeds,
  'work-out-plan': workOutPlan,
  'raise-reminders': raiseReminders,
  'send-messages': (payload) => deliverMessages(payload, waysOut()),
  'read-bounces': readBounces,
  nightly: async () => {
    await forgetOldIdentityEvents()
    for (const companyId of await companyIds()) {
      const { isClosing, isDue } = await closingOf(companyId)
      if (isDue) await eraseAll(companyId)
      // Nobody is reminded any more by a company that closes, and its last archive stays as long as it does.
      if (isClosing) continue
      await sendTaskAlone('refit-company', { companyId, cause: 'nightly' }, companyId)
      await sendTaskAlone('raise-reminders', { companyId }, companyId)
      await sendTaskAlone('send-messages', { companyId }, companyId)
      await removeOldExports(companyId)
      await sendTaskAlone('remove-pictures', { companyId }, companyId)
    }
  },
}
