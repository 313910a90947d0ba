import { config } from '@almanac/runtime/config'
import type { Logger } from '@almanac/runtime/log'
import { createTransport } from 'nodemailer'

export type Mail = { to: string; subject: string; text: string }

/** A server that does not answer keeps whoever waits for no longer than this. */
const PATIENCE_MS = 10_000

/** Whether a mail server is set up. */
export const mailWorks = (): boolean => config().SMTP_URL !== undefined

/** Hands a mail to the mail server. Throws where it does not take it; whether it arrives is then its affair. */
export async function sendMail({ to, subject, text }: Mail): Promise<void> {
  const { SMTP_URL, MAIL_FROM } = config()
  if (!SMTP_URL || !MAIL_FROM) throw new Error('no mail server is set up')
  const patience = { connectionTimeout: PATIENCE_MS, greetingTimeout: PATIENCE_MS, socketTimeout: PATIENCE_MS }
  const transport = createTransport({ url: SMTP_URL, ...patience })
  try {
    await transport.sendMail({ from: MAIL_FROM, to, subject, text })
  } finally {
    transport.close()
  }
}

/** Whether the mail server took a mail; why not goes into the log, without the address. */
export async function acceptedMail(mail: Mail, log: Logger): Promise<boolean> {
  try {
    await sendMail(mail)
    return true
  } catch (error) {
    const { code, responseCode } = error as { code?: string; responseCode?: number }
    log.error({ code, responseCode }, 'a mail was not taken by the mail server')
    return false
  }
}
