// A worker that is killed between the mail server's answer and the commit: it sends one message for real and takes its own life with signal 9.
import { setClock } from '@almanac/runtime/clock'
import { log } from '@almanac/runtime/log'
import { postMail } from '../../../packages/messages/send-mail.ts'
import { deliverMessages } from '../../../packages/operations/reminders/deliver-messages.ts'

const [companyId = '', instant = ''] = process.argv.slice(2)
setClock(() => new Date(instant))
await deliverMessages(
  { companyId },
  {
    email: async ({ address: to, subject, body: text }) => {
      const posted = await postMail({ to, subject, text }, log())
      process.kill(process.pid, 'SIGKILL')
      return posted
    },
  },
)
process.exit(3) // it found nothing to send
