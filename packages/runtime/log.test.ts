import { expect, test } from 'vitest'
import { AppError } from './errors.ts'
import { loggedError } from './log.ts'

test('an error is logged with its kind and where it came from', () => {
  const error = new RangeError('"0001-01-01" is no day.')
  expect(JSON.parse(JSON.stringify(loggedError(error)))).toEqual({
    name: 'RangeError',
    message: '"0001-01-01" is no day.',
    at: expect.arrayContaining([expect.stringContaining('log.test.ts')]),
  })
})

test('and with nothing that somebody may have typed', () => {
  const quoting = Object.assign(new Error('Key (email)=(ann@poe.example) already exists.'), { code: '23505', detail: 'ann@poe.example' })
  const wrapped = new AppError('unavailable', 'Ann Poe could not be saved.', { name: 'Ann Poe' }, quoting)
  const logged = JSON.stringify(loggedError(wrapped))
  expect(logged).not.toMatch(/poe/i)
  expect(JSON.parse(logged)).toMatchObject({ name: 'AppError', code: 'unavailable', cause: { code: '23505' } })
})

test('what is no error stays as it is', () => {
  expect(loggedError('connection lost')).toBe('connection lost')
})
