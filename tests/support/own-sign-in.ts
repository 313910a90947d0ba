import { identityClient } from '@almanac/database/client'
import { auth } from '@almanac/identity/auth'
import { ADDRESS_HEADER } from '@almanac/identity/client-address'
import { addPerson } from '@almanac/identity/people'
import { newId } from '@almanac/runtime/ids'
import type pg from 'pg'

export const PASSWORD = 'brine tanks bridge in summer'

/** A request to sign-in's own routes, as a page of the app sends it. */
export const post = (path: string, body: object, headers: Record<string, string> = {}) =>
  auth().handler(
    new Request(`http://localhost:3000/api/auth/${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', origin: 'http://localhost:3000', [ADDRESS_HEADER]: '203.0.113.9', ...headers },
      body: JSON.stringify(body),
    }),
  )
export const signIn = (email: string, password: string, from: string, cookie = '') =>
  post('sign-in/email', { email, password }, { [ADDRESS_HEADER]: from, cookie })
export const cookiesOf = (answer: Response) => answer.headers.getSetCookie().map((one) => one.split(';')[0])
export const somebody = async () => {
  const email = `${newId()}@firm.example`
  return { email, id: await addPerson({ name: 'Ada Roe', email, password: PASSWORD }) }
}
/** What is held up stays so for longer than these tests take; what is not stays free. */
export const holdLonger = (db: pg.Client) =>
  db.query(`update sign_in_guard set blocked_until = blocked_until + interval '1 hour' where blocked_until > last_at`)
export const events = async (personId: string | null) =>
  (await identityClient().identityEvent.findMany({ where: { personId }, orderBy: { at: 'asc' } })).map(
    ({ kind, count }) => `${kind} ${count}`,
  )
