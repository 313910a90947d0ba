import { type MessageState, messageStates } from '@almanac/records/message-state'
import { describe, expect, test } from 'vitest'
import { type MessageEvent, messageEvents, nextMessageState } from './message-states.ts'

/** Every step that is allowed; whatever is not listed here must be refused. Written from what can happen to a letter, not from the table. */
const allowed: Record<string, MessageState> = {
  'drafted approve': 'approved',
  'drafted hold': 'held',
  'drafted withdraw': 'withdrawn',
  'approved hold': 'held',
  'approved withdraw': 'withdrawn',
  'approved mark-sent': 'sent',
  'approved begin': 'sending',
  'held free': 'approved',
  'held withdraw': 'withdrawn',
  'sending take': 'sent',
  'sending put-off': 'approved',
  'sending refuse': 'refused',
  'sending lose': 'uncertain',
  'sent bounce': 'bounced',
  'refused send-again': 'approved',
  'uncertain mark-sent': 'sent',
  'uncertain send-again': 'approved',
  'uncertain take': 'sent',
  'uncertain bounce': 'bounced',
}

describe.each(messageStates)('a message that is %s', (state) => {
  test.each(messageEvents)('%s', (event: MessageEvent) => {
    const step = nextMessageState(state, event)
    const expected = allowed[`${state} ${event}`]
    if (expected) expect(step).toEqual({ ok: true, state: expected })
    else expect(step).toEqual({ ok: false, reason: expect.stringMatching(/^[A-Z].{15,}\.$/) })
  })
})

test('what may have been sent goes out again by a person’s word alone', () => {
  const ofTheWorker: MessageEvent[] = ['begin', 'take', 'put-off', 'refuse', 'lose', 'bounce']
  for (const state of ['sent', 'bounced', 'refused', 'uncertain', 'withdrawn'] as const)
    for (const event of ofTheWorker) {
      const step = nextMessageState(state, event)
      if (step.ok) expect(['sent', 'bounced']).toContain(step.state)
    }
})
