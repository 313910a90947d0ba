import { AppError, ERROR_CODES, type ErrorCode } from '@almanac/runtime/errors'
import { wordsIn } from '@almanac/words/words-in'
import { expect, it, vi } from 'vitest'
import { englishLeft } from '../../../tests/support/english-left.ts'
import type { RequestContext } from './context.ts'
import { toWireError } from './wire-error.ts'

// Next's own guard, which throws outside a server bundle.
vi.mock('server-only', () => ({}))

const log = { error: () => {}, warn: () => {}, info: () => {} }
const asked = (locale: string | null, accepted = '') =>
  ({
    headers: new Headers(accepted ? { 'accept-language': accepted } : {}),
    requestId: 'r',
    address: '127.0.0.1',
    log,
    ...(locale === null ? {} : { who: { company: { locale } } }),
  }) as unknown as RequestContext

const closed = () => new AppError('conflict', (locale) => wordsIn(locale, 'refusal')('closedAlready'))

it('a refusal is said in the language of whoever asked; of nobody known, in the browser’s', () => {
  expect(toWireError(closed(), asked('en-US')).message).toBe('This visit was closed out already. This second close-out changed nothing.')
  expect(toWireError(closed(), asked('es-US')).message).toBe('Esta visita ya se había cerrado. Este segundo cierre no cambió nada.')
  expect(toWireError(closed(), asked(null, 'es-MX,es;q=0.9,en;q=0.8')).message).toContain('ya se había cerrado')
  expect(toWireError(closed(), asked(null, 'fr-FR,en;q=0.8')).message).toContain('was closed out already')
})

it.each(Object.keys(ERROR_CODES) as ErrorCode[])('%s without words of its own in Spanish is said by its kind', (code) => {
  const error = () => new AppError(code, 'The yard gate is shut. Nothing was changed.')
  expect(toWireError(error(), asked('en-US')).message).toBe('The yard gate is shut. Nothing was changed.')
  const { message } = toWireError(error(), asked('es-US'))
  expect(message).toContain(wordsIn('es-US', 'refusal')(`code/${code}`))
  expect(englishLeft(message, ['The yard gate is shut. Nothing was changed.'])).toEqual([])
})
