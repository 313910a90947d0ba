import { describe, expect, test } from 'vitest'
import { reportOfDelivery } from '../../tests/support/report-of-delivery.ts'
import { readBounce } from './read-bounce.ts'

const read = (mail: string) => readBounce(Buffer.from(mail))
const of = { messageId: 'AbC_-09', to: 'hanna@orchard.example' }

describe('a report of delivery', () => {
  test.each(['text/rfc822-headers', 'message/rfc822'] as const)('with the mail as %s says which it was, and why', async (returned) => {
    expect(await read(reportOfDelivery({ ...of, returned }))).toEqual({ messageId: 'AbC_-09', status: '5.1.1' })
  })

  test.each(['delayed', 'delivered'] as const)('of something %s is no bounce', async (action) => {
    expect(await read(reportOfDelivery({ ...of, action }))).toBeNull()
  })

  test('that is not one, or is broken, is none', async () => {
    for (const mail of [
      '',
      'Subject: Hello\r\n\r\nAction: failed\r\nMessage-ID: <AbC_-09@firm.example>',
      reportOfDelivery(of).slice(0, 700),
    ])
      expect(await read(mail)).toBeNull()
  })
})
