import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { config, forgetConfig } from './config.ts'
import { AppError, ERROR_CODES, notFound } from './errors.ts'

const good = {
  DATABASE_URL: 'postgresql://app@db/almanac',
  IDENTITY_DATABASE_URL: 'postgres://identity@db/almanac',
  AUTH_SECRET: 'thirty-two characters are enough',
}

beforeEach(() => {
  for (const name of ['PUBLIC_URL', 'DATABASE_POOL', 'LOG_LEVEL', 'SIGN_IN_TRIES_PER_MINUTE', 'REQUESTS_PER_MINUTE'])
    vi.stubEnv(name, undefined)
  for (const [name, value] of Object.entries(good)) vi.stubEnv(name, value)
  forgetConfig()
})
afterEach(() => {
  vi.unstubAllEnvs()
  forgetConfig()
})

describe('the configuration', () => {
  test('has its defaults, and reads numbers as numbers', () => {
    expect(config()).toMatchObject({ ...good, PUBLIC_URL: 'http://localhost:3000', DATABASE_POOL: 10 })
    vi.stubEnv('DATABASE_POOL', '25')
    forgetConfig()
    expect(config().DATABASE_POOL).toBe(25)
  })

  test('names every setting that is wrong in one sentence', () => {
    vi.stubEnv('DATABASE_URL', 'mysql://db')
    vi.stubEnv('AUTH_SECRET', 'short')
    vi.stubEnv('DATABASE_POOL', 'many')
    const refused = () => config()
    expect(refused).toThrow(AppError)
    expect(refused).toThrow(/DATABASE_URL must begin with postgresql:\/\/.*AUTH_SECRET must have 32 characters or more.*DATABASE_POOL/)
  })

  test.each([
    ['DATABASE_POOL', '0'],
    ['DATABASE_POOL', '2.5'],
    ['LOG_LEVEL', 'loud'],
    ['PUBLIC_URL', 'not an address'],
    ['REQUESTS_PER_MINUTE', '-1'],
    ['IDENTITY_DATABASE_URL', ''],
  ])('refuses %s=%j', (name, value) => {
    vi.stubEnv(name, value)
    expect(() => config()).toThrow(name)
  })
})

test('only failures that may pass by themselves are marked for trying again', () => {
  const retryable = Object.entries(ERROR_CODES).filter(([, facts]) => facts.retryable)
  expect(retryable.map(([code]) => code).sort()).toEqual(['rate-limited', 'unavailable', 'unexpected'])
  expect(notFound('bed')).toMatchObject({
    code: 'not-found',
    status: 404,
    retryable: false,
    message: expect.stringContaining('no such bed'),
  })
})
