import type { GuideState } from '@almanac/records/guide-state'

/**
 * What can happen to an owner's link. `send`, `release` and `fix` are the office's; `next`, `hold` (on to a step with a hold point), `photo` (of a hold point), `finish`, `soft`
 * and `trouble` the owner's; either makes a visit of it.
 */
export const guideEvents = ['send', 'next', 'hold', 'photo', 'release', 'fix', 'finish', 'soft', 'trouble', 'visit'] as const
export type GuideEvent = (typeof guideEvents)[number]

/** Why an event can't happen now; the screens have the words. */
export type GuideRefusal =
  | 'not-sent'
  | 'sent-already'
  | 'hold-first'
  | 'no-hold'
  | 'nothing-to-look-at'
  | 'steps-first'
  | 'over'
  | 'steps-over'
type GuideStep = { ok: true; state: GuideState } | { ok: false; why: GuideRefusal }

const to = (state: GuideState): GuideStep => ({ ok: true, state })
const no = (why: GuideRefusal): GuideStep => ({ ok: false, why })
const sent = no('sent-already')
const over = (why: GuideRefusal, more: Partial<Record<GuideEvent, GuideStep>> = {}) => ({
  ...(Object.fromEntries(guideEvents.map((event) => [event, no(why)])) as Record<GuideEvent, GuideStep>),
  ...more,
})

/** Every state with every event. Nothing but the office's word leads past a hold point. */
const TABLE: Readonly<Record<GuideState, Readonly<Record<GuideEvent, GuideStep>>>> = {
  measuring: over('not-sent', { send: to('working'), visit: to('visit') }),
  working: {
    ...{ send: sent, next: to('working'), hold: to('holding'), photo: no('no-hold'), release: no('no-hold'), fix: no('no-hold') },
    ...{ finish: to('asked'), soft: no('steps-first'), trouble: no('steps-first'), visit: to('visit') },
  },
  holding: {
    ...{ send: sent, next: no('hold-first'), hold: no('hold-first'), photo: to('looking'), release: no('nothing-to-look-at') },
    ...{ fix: no('nothing-to-look-at'), finish: no('hold-first'), soft: no('steps-first'), trouble: no('steps-first'), visit: to('visit') },
  },
  looking: {
    ...{ send: sent, next: no('hold-first'), hold: no('hold-first'), photo: to('looking'), release: to('working'), fix: to('holding') },
    ...{ finish: no('hold-first'), soft: no('steps-first'), trouble: no('steps-first'), visit: to('visit') },
  },
  asked: over('steps-over', { soft: to('soft'), trouble: to('trouble'), visit: to('visit') }),
  soft: over('over'),
  trouble: over('over', { visit: to('visit') }),
  visit: over('over'),
}

/** The state after an event, or why it can't happen now. */
export const nextGuideState = (state: GuideState, event: GuideEvent): GuideStep => TABLE[state][event]
