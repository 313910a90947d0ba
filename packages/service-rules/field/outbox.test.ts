import { expect, test } from 'vitest'
import { afterSending, emptyOutbox, enqueue, resume, toSend } from './outbox.ts'

const command = (commandId: string) => ({
  ...{ commandId, form: 1, kind: 'start', madeAt: '2026-12-03T16:00:00Z', body: {}, visitId: 'visit', siteLabel: 'Larch Avenue 36' },
})
const queue = enqueue(enqueue(emptyOutbox('queue'), command('first')), command('second'))
const [first] = queue.waiting
if (!first) throw new Error('nothing waits')

test('a second answer to a command, as two windows get it, changes nothing', () => {
  const answered = afterSending(queue, first, { result: 'set-aside', reason: 'called off' })
  expect(answered).toMatchObject({ waiting: [{ commandId: 'second' }], told: [{ commandId: 'first' }] })
  expect(afterSending(answered, first, { result: 'set-aside', reason: 'called off' })).toBe(answered)
  expect(afterSending(answered, first, { result: 'failed', code: 'unavailable' })).toBe(answered)
})

test('while another person is signed in nothing is sent and nothing is lost', () => {
  const halted = afterSending(queue, first, { result: 'failed', code: 'conflict', elsewhere: 'other-person' })
  expect(halted).toMatchObject({ halt: 'other-person', waiting: queue.waiting, stuck: [] })
  expect(toSend(halted)).toBeNull()
  expect(toSend(resume(halted))).toMatchObject({ commandId: 'first', oldest: 1 })
})
