import { config } from '@almanac/runtime/config'
import type { Logger } from '@almanac/runtime/log'
import { createTransport, type SendMailOptions } from 'nodemailer'
import { PATIENCE_MS, type Posted, WHOLE_PATIENCE_MS } from './posted.ts'

export type Mail = {
  to: string
  subject: string
  text: string
  /** Whom it says it is from, beside the server's own address. */
  fromName?: string
  /** The same each time this mail is tried; its Message-ID. */
  id?: string
  /** Where somebody is taken off the list with one click (RFC 8058). */
  unsubscribe?: string
  /** A PDF that goes with it. */
  attachment?: { name: string; bytes: Uint8Array }
}

type SmtpError = { code?: string; responseCode?: number; message?: string }

/** Whether a mail server is set up. */
export const mailWorks = (): boolean => config().SMTP_URL !== undefined

/** The server's address under another name: a company's mails say the company. */
function fromOf(mailFrom: string, name: string | undefined) {
  if (name === undefined) return mailFrom
  return { name, address: mailFrom.match(/<([^<>]+)>/)?.[1] ?? mailFrom }
}

function optionsOf({ to, subject, text, fromName, id, unsubscribe, attachment }: Mail, mailFrom: string): SendMailOptions {
  const host = mailFrom.match(/@([^\s>]+)/)?.[1] ?? 'localhost'
  return {
    ...{ from: fromOf(mailFrom, fromName), to: { name: '', address: to }, subject, text },
    // No file and no address is fetched for a mail, whatever somebody typed into it.
    ...{ disableFileAccess: true, disableUrlAccess: true },
    ...(attachment
      ? { attachments: [{ filename: attachment.name, content: Buffer.from(attachment.bytes), contentType: 'application/pdf' }] }
      : {}),
    ...(id ? { messageId: `<${id}@${host}>` } : {}),
    ...(unsubscribe ? { headers: { 'List-Unsubscribe': `<${unsubscribe}>`, 'List-Unsubscribe-Post': 'List-Unsubscribe=One-Click' } } : {}),
  }
}

/** The mail and, besides, whether its contents may have begun to go over. */
async function send(mail: Mail, handing: { begun: boolean }): Promise<void> {
  const { SMTP_URL, MAIL_FROM } = config()
  if (!SMTP_URL || !MAIL_FROM) throw new Error('no mail server is set up')
  const patience = { connectionTimeout: PATIENCE_MS, greetingTimeout: PATIENCE_MS, socketTimeout: PATIENCE_MS }
  const transport = createTransport({ url: SMTP_URL, ...patience })
  transport.use('stream', (made, done) => {
    // Asked for once the server has greeted and knows us, just before the envelope.
    made.message.processFunc((stream) => {
      handing.begun = true
      return stream
    })
    done()
  })
  let alarm: NodeJS.Timeout | undefined
  const tooLong = new Promise<never>((_, fail) => {
    alarm = setTimeout(() => fail(new Error('the mail server took too long')), WHOLE_PATIENCE_MS)
  })
  try {
    await Promise.race([transport.sendMail(optionsOf(mail, MAIL_FROM)), tooLong])
  } finally {
    clearTimeout(alarm)
    transport.close()
  }
}

const SERVER_CODES = new Set(['EAUTH', 'ENOAUTH', 'EOAUTH2', 'ETLS', 'EDNS', 'EPROXY', 'ECONFIG'])

/** What the server, or its silence, says: a reply of 4xx is for later and one of 5xx is no (RFC 5321, 4.2.1); silence after the contents began is not known. */
function judge({ code, responseCode }: SmtpError, begun: boolean): Posted {
  const reason = responseCode ? `The mail server answered ${responseCode}.` : 'The mail server didn’t answer.'
  if (!begun || SERVER_CODES.has(code ?? '')) return { outcome: 'later', reason, wholeServer: true }
  // 421: the service is closing the connection, whatever was asked (RFC 5321, 3.8).
  if (responseCode && responseCode < 500) return { outcome: 'later', reason, wholeServer: responseCode === 421 }
  if (responseCode) return { outcome: 'refused', reason }
  return { outcome: 'uncertain', reason: 'The connection to the mail server broke while it took the message.' }
}

/** Hands a mail to the mail server once, and says what came of it. Never throws for what the server does. */
export async function postMail(mail: Mail, log: Logger): Promise<Posted> {
  const handing = { begun: false }
  try {
    await send(mail, handing)
    return { outcome: 'taken' }
  } catch (error) {
    const { code, responseCode } = error as SmtpError
    log.error({ code, responseCode }, 'a mail was not taken by the mail server')
    return judge(error as SmtpError, handing.begun)
  }
}

/** Whether the mail server took a mail; why not goes into the log, without the address. */
export const acceptedMail = async (mail: Mail, log: Logger): Promise<boolean> => (await postMail(mail, log)).outcome === 'taken'
