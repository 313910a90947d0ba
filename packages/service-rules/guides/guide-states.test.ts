import fs from 'node:fs'
import path from 'node:path'
import { guideStates } from '@almanac/records/guide-state'
import { describe, expect, test } from 'vitest'
import { type GuideEvent, guideEvents, nextGuideState } from './guide-states.ts'

/** The steps as docs/guided-owner.md lists them: from, event, to. */
function listed(): string[] {
  const page = fs.readFileSync(path.resolve(import.meta.dirname, '../../../docs/guided-owner.md'), 'utf8')
  return page.split('\n').flatMap((line) => {
    const [, from, on] = line.split('|').map((cell) => cell.trim())
    const step = /^(\w+): `(\w+)`$/.exec(on ?? '')
    return step && from ? from.split(', ').map((state) => `${state} ${step[2]} ${step[1]}`) : []
  })
}

const led = guideStates.flatMap((from) =>
  guideEvents.flatMap((event) => {
    const step = nextGuideState(from, event)
    return step.ok ? [`${from} ${event} ${step.state}`] : []
  }),
)

describe('the states of an owner’s link', () => {
  test('lead on as the page in docs says, each pair of state and event answered', () => {
    expect(led.sort()).toEqual(listed().sort())
    expect(led).toHaveLength(16)
    for (const state of guideStates) for (const event of guideEvents) expect(nextGuideState(state, event)).toBeDefined()
  })
  test('nothing the owner does leads past a hold point', () => {
    const owners: GuideEvent[] = ['next', 'hold', 'finish', 'soft', 'trouble']
    for (const event of owners)
      for (const state of ['holding', 'looking'] as const) expect(nextGuideState(state, event)).toMatchObject({ ok: false })
    expect(nextGuideState('looking', 'photo')).toEqual({ ok: true, state: 'looking' })
  })
  test('it becomes a visit at any moment until it is done', () => {
    for (const state of guideStates) expect(nextGuideState(state, 'visit').ok).toBe(!['soft', 'visit'].includes(state))
  })
})
