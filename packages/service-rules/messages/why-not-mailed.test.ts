import { messageStates } from '@almanac/records/message-state'
import { expect, test } from 'vitest'
import { type Reader, whyNotMailed } from './why-not-mailed.ts'

const reader: Reader = { email: 'hanna@orchard.example', deadEmail: null, agreed: true, mailed: [] }

test.each([
  [{}, null],
  [{ email: null }, 'no-address'],
  [{ email: ' ' }, 'no-address'],
  [{ deadEmail: 'hanna@orchard.example' }, 'came-back'],
  // Corrected since.
  [{ deadEmail: 'hana@orchard.example' }, null],
  [{ agreed: false }, 'no-consent'],
  [{ email: null, agreed: false }, 'no-address'],
] as const)('%j: %s', (change, why) => expect(whyNotMailed({ ...reader, ...change })).toBe(why))

// By hand from docs/messages.md: what was withdrawn, refused or came back reached nobody; of every other state somebody has it, or may have.
test.each(messageStates)('after one that is %s', (state) => {
  const inVain = state === 'withdrawn' || state === 'refused' || state === 'bounced'
  expect(whyNotMailed({ ...reader, mailed: [state] })).toBe(inVain ? null : 'sent')
  expect(whyNotMailed({ ...reader, mailed: ['bounced', state] })).toBe(inVain ? null : 'sent')
})
