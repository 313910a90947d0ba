import { contract } from '@almanac/contract/contract'
import { auth } from '@almanac/identity/auth'
import { addMembership, addPerson } from '@almanac/identity/people'
import type { Role } from '@almanac/records/role'
import { newId } from '@almanac/runtime/ids'
import { log } from '@almanac/runtime/log'
import { type AnyRouter, call, isProcedure, ORPCError } from '@orpc/server'
import type * as z from 'zod'
import { router } from '../../apps/web/server/router.ts'

/** Of everybody whom `makeCaller` makes. */
export const PASSWORD = 'resin beads in a brine tank'

export type Caller = { personId: string; email: string; headers: Headers; sessionId: string }

/** A session of a person, as the browser that signed in would send it. */
export async function signInAs(email: string): Promise<{ headers: Headers; sessionId: string }> {
  const answer = await auth().api.signInEmail({ body: { email, password: PASSWORD }, returnHeaders: true })
  const cookie = answer.headers.getSetCookie().map((one) => one.split(';')[0])
  const headers = new Headers({ cookie: cookie.join('; ') })
  const found = await auth().api.getSession({ headers })
  if (!found) throw new Error('signing in made no session')
  return { headers, sessionId: found.session.id }
}

/** A person with a password who is signed in and, where given, a member of a company. */
export async function makeCaller(companyId?: string, role: Role = 'owner'): Promise<Caller> {
  const email = `${newId()}@firm.example`
  const personId = await addPerson({ name: 'Ada Roe', email, password: PASSWORD })
  if (companyId) await addMembership(personId, companyId, role)
  return { personId, email, ...(await signInAs(email)) }
}

type Found = { name: string; domain: string; verb: string; procedure: Parameters<typeof call>[0]; input: z.core.$ZodType | undefined }

/** Every procedure of the server's router, with the input schema that the contract gives it. */
export function allProcedures(): Found[] {
  return Object.entries(router as Record<string, AnyRouter>).flatMap(([domain, procedures]) =>
    Object.entries(procedures as Record<string, unknown>).map(([verb, procedure]) => {
      if (!isProcedure(procedure)) throw new Error(`${domain}.${verb} is no procedure; teach this test about it`)
      const promised = (contract as unknown as Record<string, Record<string, { '~orpc': { inputSchema?: unknown } }>>)[domain]?.[verb]
      return { name: `${domain}.${verb}`, domain, verb, procedure, input: promised?.['~orpc'].inputSchema as z.core.$ZodType | undefined }
    }),
  )
}

export type Outcome = { ok: boolean; code: string; status: number; said: string }

/** Sends one request through the whole wrapper; ids in `hide` are blotted out of what is said, to compare answers. */
export async function send(procedure: Found['procedure'], headers: Headers, input: unknown, hide: string[] = []): Promise<Outcome> {
  const blot = (value: unknown) => hide.reduce((text, id) => text.replaceAll(id, '<id>'), JSON.stringify(value) ?? '')
  try {
    const answer = await call(procedure, input as never, { context: { headers, requestId: 'r', log: log() } as never })
    return { ok: true, code: 'ok', status: 200, said: blot(answer) }
  } catch (error) {
    if (!(error instanceof ORPCError)) throw error
    const { message, data } = error as ORPCError<string, { detail?: unknown }>
    return { ok: false, code: error.code, status: error.status, said: blot({ message, detail: data?.detail }) }
  }
}
