import { config } from '@almanac/runtime/config'
import { auth } from './auth.ts'
import { ADDRESS_HEADER } from './client-address.ts'
import { unlessLost } from './lost-database.ts'

/**
 * Signs somebody in who has just chosen this password, over the library's own way in with its limits and hooks: the cookies that do it, or null where signing in is
 * held up just now, or asks for more than a password.
 */
export async function sessionFor(headers: Headers, given: { email: string; password: string }): Promise<string[] | null> {
  const home = config().PUBLIC_URL
  const sent = new Headers({ 'content-type': 'application/json', origin: new URL(home).origin })
  for (const name of [ADDRESS_HEADER, 'user-agent']) {
    const value = headers.get(name)
    if (value) sent.set(name, value)
  }
  const request = new Request(new URL('/api/auth/sign-in/email', home), { method: 'POST', headers: sent, body: JSON.stringify(given) })
  const answer = await unlessLost(() => auth().handler(request))
  return answer.ok ? answer.headers.getSetCookie() : null
}
