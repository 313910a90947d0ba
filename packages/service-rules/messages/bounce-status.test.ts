import { expect, test } from 'vitest'
import { bounceWords, isDeadAddress } from './bounce-status.ts'

// RFC 3463, 3.2 to 3.8: 5.1.1 bad mailbox, 5.1.10 null MX (RFC 7505), 5.2.1 disabled, 5.2.2 full, 5.7.1 not authorized; 4.x.x is passing.
test.each([
  ['5.1.1', true, 'The address doesn’t take mail (5.1.1).'],
  ['5.1.10', true, 'The address doesn’t take mail (5.1.10).'],
  ['5.2.1', true, 'The address doesn’t take mail (5.2.1).'],
  ['5.2.2', false, 'The mailbox is full (5.2.2).'],
  ['5.7.1', false, 'The other side refused it (5.7.1).'],
  ['4.4.7', false, 'It came back (4.4.7).'],
  ['5.0.0', false, 'It came back (5.0.0).'],
  [null, false, 'It came back without a reason.'],
])('%s', (status, dead, words) => {
  expect(isDeadAddress(status)).toBe(dead)
  expect(bounceWords(status)).toBe(words)
})
