import type { Ask, ProcedureStep } from '@almanac/softener/procedure/procedure-types'
import { expect, test } from 'vitest'
import { stepMark } from './step-marks.ts'

const ask = (id: Ask['id'], part: Partial<Ask> = {}): Ask => ({
  id,
  label: id,
  kind: 'confirm',
  unit: null,
  amount: null,
  choices: [],
  required: true,
  ...part,
})
const step = (...asks: Ask[]): ProcedureStep => ({
  id: 'run-clear',
  title: '',
  dose: null,
  text: '',
  cautions: [],
  asks,
  minutes: 1,
  waitMinutes: null,
})
const by = { locale: 'en-US', units: 'us', tank: null } as const
const answer = (text: string, unit: string | null = null) => ({ text, unit, value: null, at: '2026-12-03T15:00:00Z' })
const mark = (of: ProcedureStep, answers = {}, passed: string[] = []) => stepMark(of, { answers, passed }, by)

test('a step is done by its answers: a skipped one is not, however far the visit went', () => {
  const clear = step(ask('drain-clear', { kind: 'choice', choices: [{ value: 'clear', label: 'Clear, no beads' }] }))
  expect(mark(clear)).toEqual({ done: false, said: '' })
  expect(mark(clear, {}, ['run-clear'])).toEqual({ done: false, said: '' })
  expect(mark(clear, { 'drain-clear': answer('clear') })).toEqual({ done: true, said: 'Clear, no beads' })
})

test('one that asks nothing that must be answered is done once it was gone on from', () => {
  const optional = step(ask('sanitised', { required: false }))
  expect(mark(optional).done).toBe(false)
  expect(mark(optional, {}, ['run-clear']).done).toBe(true)
  expect(mark(step(), {}, ['run-clear']).done).toBe(true)
})

test('a number is said with its unit, once, and one that cannot be keeps its step open', () => {
  const tube = step(ask('new-tube-length-in', { kind: 'number', unit: 'in', amount: 'tube' }))
  expect(mark(tube, { 'new-tube-length-in': answer('52 5/8', 'in') })).toEqual({ done: true, said: '52 5/8 in' })
  expect(mark(tube, { 'new-tube-length-in': answer('52 5/8 in', 'in') }).said).toBe('52 5/8 in')
  expect(mark(tube, { 'new-tube-length-in': answer('abc', 'in') }).done).toBe(false)
})
