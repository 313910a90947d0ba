/** A report of delivery as mail servers write one: RFC 3464, 2, with the head of the mail that it is about (RFC 3462, 2). */
export function reportOfDelivery({
  messageId,
  to,
  status = '5.1.1',
  action = 'failed',
  returned = 'text/rfc822-headers',
}: {
  messageId: string
  to: string
  status?: string
  action?: 'failed' | 'delayed' | 'delivered'
  returned?: 'text/rfc822-headers' | 'message/rfc822'
}): string {
  const original = [
    `From: <almanac@firm.example>`,
    `To: <${to}>`,
    'Subject: The resin of your water softener',
    `Message-ID: <${messageId}@firm.example>`,
  ]
  return [
    'From: Mail Delivery Subsystem <mailer-daemon@relay.example>',
    'To: <almanac@firm.example>',
    'Subject: Undelivered Mail Returned to Sender',
    'Date: Wed, 2 Dec 2026 16:05:00 +0000',
    'Auto-Submitted: auto-replied',
    'MIME-Version: 1.0',
    'Content-Type: multipart/report; report-type=delivery-status; boundary="=_part"',
    '',
    'This is a MIME-encapsulated message.',
    '',
    '--=_part',
    'Content-Type: text/plain; charset=us-ascii',
    '',
    `I could not deliver your message to ${to}.`,
    '',
    '--=_part',
    'Content-Type: message/delivery-status',
    '',
    'Reporting-MTA: dns; relay.example',
    '',
    `Final-Recipient: rfc822; ${to}`,
    `Action: ${action}`,
    `Status: ${status}`,
    'Diagnostic-Code: smtp; 550 5.1.1 No such user',
    '',
    '--=_part',
    `Content-Type: ${returned}`,
    '',
    ...original,
    '',
    ...(returned === 'message/rfc822' ? ['Dear customer,', ''] : []),
    '--=_part--',
    '',
  ].join('\r\n')
}
