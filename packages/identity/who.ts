import { identityClient } from '@almanac/database/client'
import { readMemberships } from '@almanac/database/sql/memberships'
import { type Language, localeFor } from '@almanac/records/language'
import type { Paper } from '@almanac/records/paper'
import type { Permission } from '@almanac/records/permission'
import type { Role } from '@almanac/records/role'
import { now } from '@almanac/runtime/clock'
import { AppError } from '@almanac/runtime/errors'
import { auth } from './auth.ts'
import { may } from './permissions.ts'

/** `locale` is that in which this person reads it: their own language, else the company's. */
export type CompanyCard = {
  id: string
  name: string
  timeZone: string
  unitSystem: 'us' | 'metric'
  currency: string
  locale: string
  paper: Paper
  /** When everything of it is erased, an instant; null: it is not being closed. */
  closesAt: string | null
}

/** Who is asking, in which company, in which role; read from the database on every request. */
export type Who = {
  sessionId: string
  /** `language` is null for whoever reads the company's own. */
  person: { id: string; name: string; email: string; language: Language | null; secondStep: boolean }
  company: CompanyCard
  role: Role
  companies: { id: string; name: string; role: Role }[]
}

/** Someone who is signed in, whether in a company or in none. */
export type SignedInPerson = { id: string; name: string; email: string; sessionId: string }

/** Who is signed in, if anyone, without asking for a company. */
export async function readPerson(headers: Headers): Promise<SignedInPerson | null> {
  const found = await auth().api.getSession({ headers })
  return found && { id: found.user.id, name: found.user.name, email: found.user.email, sessionId: found.session.id }
}

const SIGN_IN = 'You’re not signed in, or your session has ended. What you typed is still on this page; sign in again to send it.'

/**
 * Reads the session and the membership afresh. Throws `unauthenticated` without a session, `forbidden` for a person who is in no company
 * any more. The company is the one the session is set to, while the membership lasts; else the person's first.
 */
export async function readWho(headers: Headers): Promise<Who> {
  const found = await auth().api.getSession({ headers })
  if (!found) throw new AppError('unauthenticated', SIGN_IN)
  const memberships = await readMemberships(found.user.id)
  const wanted = (found.session as { activeCompanyId?: string | null }).activeCompanyId
  const active = memberships.find((one) => one.companyId === wanted) ?? memberships[0]
  if (!active)
    throw new AppError('forbidden', 'You’re not a member of any company right now. Ask the owner of your company to add you again.')
  const language = active.language as Language | null
  return {
    sessionId: found.session.id,
    person: { id: found.user.id, name: found.user.name, email: found.user.email, language, secondStep: active.secondStep },
    company: {
      id: active.companyId,
      name: active.name,
      timeZone: active.timeZone,
      unitSystem: active.unitSystem as 'us' | 'metric',
      currency: active.currency,
      paper: active.paper as Paper,
      locale: localeFor(language, active.locale),
      closesAt: active.closesAt?.toISOString() ?? null,
    },
    role: active.role as Role,
    companies: memberships.map((one) => ({ id: one.companyId, name: one.name, role: one.role as Role })),
  }
}

/** Into a company that is being closed its owners alone. */
const LET_IN = { OR: [{ company: { closesAt: null } }, { role: 'owner' }] }

/** Whether this session still stands and its person still is in the company, in this role; for streams that stay open. */
export async function stillIn(sessionId: string, personId: string, companyId: string, role: Role): Promise<boolean> {
  const [session, membership] = await Promise.all([
    identityClient().session.findUnique({ where: { id: sessionId }, select: { expiresAt: true } }),
    identityClient().membership.findFirst({ where: { personId, companyId, endedAt: null, role, ...LET_IN }, select: { id: true } }),
  ])
  return session !== null && session.expiresAt > now() && membership !== null
}

/** Whether a person may do something in a company now: read afresh, without a session. */
export async function mayNow(personId: string, companyId: string, permission: Permission): Promise<boolean> {
  const found = await identityClient().membership.findFirst({
    where: { personId, companyId, endedAt: null, ...LET_IN },
    select: { role: true },
  })
  return found !== null && may(found.role as Role, permission)
}
