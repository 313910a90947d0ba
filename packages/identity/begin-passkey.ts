import { config } from '@almanac/runtime/config'
import { AppError } from '@almanac/runtime/errors'
import { auth } from './auth.ts'
import { checkPassword } from './check-password.ts'
import { readPerson } from './who.ts'

/** Where a page asks to add a passkey; the library's own beginning, which asks for no password, is not served. */
export const BEGIN_PASSKEY = '/passkey/begin'

/** What a device needs to make a passkey, once the present password was given: a session that lies open must not become a way in that stays. */
export async function beginPasskey(request: Request): Promise<Response> {
  const person = await readPerson(request.headers)
  if (!person)
    throw new AppError('unauthenticated', 'You’re not signed in, or your session has ended. No passkey was added; sign in again.')
  const given = (await request.json().catch(() => null)) as { password?: unknown } | null
  if (typeof given?.password !== 'string' || given.password.length > 1000)
    throw new AppError('invalid', 'Enter your present password first. No passkey was added.')
  await checkPassword(person.id, given.password)
  const headers = new Headers(request.headers)
  for (const name of ['content-length', 'content-type']) headers.delete(name)
  return auth().handler(new Request(new URL('/api/auth/passkey/generate-register-options', config().PUBLIC_URL), { headers }))
}
