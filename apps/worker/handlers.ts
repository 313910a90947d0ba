import { companyIds } from '@almanac/database/in-company'
import { forgetOldIdentityEvents } from '@almanac/database/sql/identity-events'
import { exportedPeople } from '@almanac/identity/exported-people'
import { mailWorks, postMail } from '@almanac/messages/send-mail'
import { backtestCompany } from '@almanac/operations/forecasts/backtest-company'
import { planRebeds } from '@almanac/operations/forecasts/plan-rebeds'
import { refitCompany, refreshBeds, refreshCompany } from '@almanac/operations/forecasts/refresh-forecasts'
import { sumMonths } from '@almanac/operations/forecasts/sum-months'
import { applyImport } from '@almanac/operations/imports/apply-import'
import { lapseCompanyOffers } from '@almanac/operations/jobs/lapse-offers'
import { workOutPlan } from '@almanac/operations/jobs/work-out-plan'
import { exportCompany } from '@almanac/operations/keeping/export-company'
import { removeOldExports } from '@almanac/operations/keeping/remove-exports'
import { deliverMessages, type Ways } from '@almanac/operations/reminders/deliver-messages'
import { raiseReminders } from '@almanac/operations/reminders/raise-reminders'
import { log } from '@almanac/runtime/log'
import type { QueueName, TaskPayloads } from '@almanac/runtime/queues'
import { sendTaskAlone } from '@almanac/runtime/task-queue'

type Handlers = { [Q in QueueName]: (payload: TaskPayloads[Q]) => Promise<void> }

/** What messages go out by here: mail where a mail server is set up. The rest waits in the outbox, to be printed or told. */
const waysOut = (): Ways => ({
  ...(mailWorks() && {
    email: ({ address: to, subject, body: text, companyName: fromName, id }) => postMail({ to, subject, text, fromName, id }, log()),
  }),
})

/** What the worker does for each queue. A handler opens its own scope from the payload's company and fails without one. */
export const HANDLERS: Handlers = {
  'apply-import': (payload) => applyImport(payload),
  'export-company': (payload) => exportCompany(payload, exportedPeople),
  'forecast-beds': refreshBeds,
  'forecast-company': refreshCompany,
  'refit-company': refitCompany,
  'forecast-months': sumMonths,
  'lapse-offers': lapseCompanyOffers,
  'backtest-company': backtestCompany,
  'plan-rebeds': planRebeds,
  'work-out-plan': workOutPlan,
  'raise-reminders': raiseReminders,
  'send-messages': (payload) => deliverMessages(payload, waysOut()),
  nightly: async () => {
    await forgetOldIdentityEvents()
    for (const companyId of await companyIds()) {
      await sendTaskAlone('refit-company', { companyId, cause: 'nightly' }, companyId)
      await sendTaskAlone('raise-reminders', { companyId }, companyId)
      await sendTaskAlone('send-messages', { companyId }, companyId)
      await removeOldExports(companyId)
    }
  },
}
