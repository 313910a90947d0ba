// A worker that is killed between the text server's answer and the commit: it sends one text for real and takes its own life with signal 9.
import { setClock } from '@almanac/runtime/clock'
import { log } from '@almanac/runtime/log'
import { postText } from '../../../packages/messages/send-text.ts'
import { deliverMessages } from '../../../packages/operations/reminders/deliver-messages.ts'

const [companyId = '', instant = ''] = process.argv.slice(2)
setClock(() => new Date(instant))
await deliverMessages(
  { companyId },
  {
    text: async ({ address: to, body: text, companyName: from, companyLocale: locale, id }) => {
      const posted = await postText({ id, to, locale, from, text }, log())
      process.kill(process.pid, 'SIGKILL')
      return posted
    },
  },
)
process.exit(3) // it found nothing to send
