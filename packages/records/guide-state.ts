/**
 * How far an owner's link is: only measuring; working through the steps; at a hold point, a photograph asked for; the photograph there, the office to look; all done, asked
 * how the water is; soft; not soft or something wrong; become a visit. What may follow what is a rule: service-rules/guides/guide-states.
 */
export const guideStates = ['measuring', 'working', 'holding', 'looking', 'asked', 'soft', 'trouble', 'visit'] as const
export type GuideState = (typeof guideStates)[number]

/** At a step: the owner has the tank in hand. */
export const atStepStates = ['working', 'holding', 'looking'] as const satisfies readonly GuideState[]

/** What an owner says of the water afterwards. */
export const guideEnds = ['soft', 'hard', 'beads', 'wrong'] as const
export type GuideEnd = (typeof guideEnds)[number]

export const guideStateWords: Readonly<Record<GuideState, string>> = {
  measuring: 'measuring',
  working: 'at work',
  holding: 'waits for their photo',
  looking: 'photo here: look now',
  asked: 'all steps done, asked how the water is',
  soft: 'done, water soft',
  trouble: 'something is wrong: call',
  visit: 'became a visit',
}

export const guideEndWords: Readonly<Record<GuideEnd, string>> = {
  soft: 'soft',
  hard: 'still hard',
  beads: 'beads at the taps',
  wrong: 'something else',
}
