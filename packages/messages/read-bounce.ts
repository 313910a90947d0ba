import { simpleParser } from 'mailparser'

/** A report that a mail could not be delivered. */
export type Bounce = {
  /** What stood before the @ of the Message-ID of the mail that came back. */
  messageId: string
  /** Why, by RFC 3463, as `5.1.1`; null where the report names none. */
  status: string | null
}

const FAILED = /^action:\s*failed\b/im
const STATUS = /^status:\s*(\d\.\d{1,3}\.\d{1,3})/im
const MESSAGE_ID = /^message-id:\s*<([\w-]{1,200})@/im

/**
 * Reads a report of delivery (RFC 3464) as it came in; null for a mail that is none, that tells of a delay or a success, or that does not say of which mail. The mail
 * that came back, or its head, is part of a report (RFC 3462), and its Message-ID says which it was.
 */
export async function readBounce(source: Buffer): Promise<Bounce | null> {
  const mail = await simpleParser(source, { keepDeliveryStatus: true, skipImageLinks: true, skipHtmlToText: true, skipTextToHtml: true })
  const partOf = (type: RegExp) => mail.attachments.find((one) => type.test(one.contentType))?.content.toString('utf8') ?? ''
  const report = partOf(/^message\/delivery-status$/i)
  if (!FAILED.test(report)) return null
  const messageId =
    MESSAGE_ID.exec(partOf(/^(message\/(rfc822|global)|text\/rfc822-headers)$/i))?.[1] ?? MESSAGE_ID.exec(mail.text ?? '')?.[1]
  return messageId === undefined ? null : { messageId, status: STATUS.exec(report)?.[1] ?? null }
}
