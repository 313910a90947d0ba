import { expect, test } from 'vitest'
import { type Answers, checksFrom, measurementsFrom } from './record-from-answers.ts'

const at = '2026-12-03T15:00:00.000Z'
const answer = (text: string, value: number | null = null, unit: string | null = null) => ({ text, value, unit, at })
const confirmed = (answers: Answers, short = false) =>
  checksFrom(answers, short)
    .filter((check) => check.confirmed)
    .map((check) => check.stepId)
    .sort()

test('a bypass that could not be shut off proves nothing', () => {
  expect(confirmed({ 'bypass-holds': answer('cannot') })).toEqual([])
  expect(confirmed({ 'bypass-holds': answer('holds') })).toEqual(['bypass-proven'])
})

test('the outlet counts as tested once a number stands there', () => {
  expect(confirmed({ 'hardness-outlet-after-gpg': answer('soft') })).toEqual([])
  expect(confirmed({ 'hardness-outlet-after-gpg': answer('0.5', 0.5, 'gpg') })).toEqual(['outlet-tested'])
})

test('"in service, no leaks" of a short procedure stands for both checks, in a rebed for one', () => {
  expect(confirmed({ 'in-service': answer('yes') }, true)).toEqual(['bypass-returned', 'in-service', 'leaks-checked'].sort())
  expect(confirmed({ 'in-service': answer('yes') }, false)).toEqual(['bypass-returned', 'in-service'])
})

test('a measurement keeps what was typed beside the canonical value', () => {
  expect(measurementsFrom({ 'hardness-raw-gpg': answer('308', 17.99, 'mg/L'), 'old-beads': answer('firm') })).toEqual([
    { kind: 'rawHardnessGpg', value: 17.99, enteredValue: 308, enteredUnit: 'mg/L' },
  ])
})

test('an answer that is neither yes nor a number is kept as a note', () => {
  expect(checksFrom({ 'old-beads': answer('soft') }, false)).toEqual([
    { stepId: 'old-beads', confirmed: false, confirmedAt: at, note: 'soft' },
  ])
})
