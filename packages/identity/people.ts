import { identityClient, type Tx } from '@almanac/database/client'
import type { Language } from '@almanac/records/language'
import type { Role } from '@almanac/records/role'
import { now } from '@almanac/runtime/clock'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { hashInTurn } from './password-queue.ts'
import { refuseWeakPassword } from './password-rules.ts'

/** Someone who is to sign in here for the first time. The email stands in small letters. */
export type FreshPerson = { name: string; email: string; password: string }
type ReadyPerson = { id: string; name: string; email: string; verified: boolean; password: string }

const emailTaken = () =>
  new AppError('conflict', 'This email already has a sign-in here. Nothing was saved; sign in with it, then open the link again.')

/** Checks and hashes what a new person brings, before any transaction. `verified`: they are known to read mail at that address. */
export async function freshPerson({ name, email, password }: FreshPerson, verified: boolean): Promise<ReadyPerson> {
  if (await identityClient().person.findUnique({ where: { email }, select: { id: true } })) throw emailTaken()
  await refuseWeakPassword(password, [name, email])
  return { id: newId(), name, email, verified, password: await hashInTurn(password) }
}

/** Writes a new person who signs in with a password. */
export async function createPerson(tx: Tx, { id, name, email, verified, password }: ReadyPerson): Promise<void> {
  if (await tx.person.findUnique({ where: { email }, select: { id: true } })) throw emailTaken()
  const account = { id: newId(), accountId: id, providerId: 'credential', password }
  await tx.person.create({ data: { id, name, email, emailVerified: verified, accounts: { create: account } } })
}

/** Adds a person with a password, for the demo and tests. Answers the person's id; an existing email keeps its person. */
export async function addPerson(input: FreshPerson): Promise<string> {
  const email = input.email.toLowerCase()
  const existing = await identityClient().person.findUnique({ where: { email } })
  if (existing) return existing.id
  await refuseWeakPassword(input.password)
  const person = { id: newId(), name: input.name, email, verified: true, password: await hashInTurn(input.password) }
  await createPerson(identityClient(), person)
  return person.id
}

/** Gives people new passwords, for set-up and the demo; ends the sessions that the old ones opened. */
export async function setPasswords(passwords: { personId: string; password: string }[]): Promise<void> {
  for (const { personId, password } of passwords) {
    const hash = await hashInTurn(password)
    await identityClient().account.updateMany({ where: { userId: personId, providerId: 'credential' }, data: { password: hash } })
    await identityClient().session.deleteMany({ where: { userId: personId } })
  }
}

/** Puts a person in a company in a role. */
export async function addMembership(personId: string, companyId: string, role: Role): Promise<void> {
  await identityClient().membership.upsert({
    where: { personId_companyId: { personId, companyId } },
    create: { id: newId(), personId, companyId, role },
    update: { role, endedAt: null },
  })
}

/** Ends a membership: the person's next request in the company is refused. */
export async function endMembership(personId: string, companyId: string): Promise<void> {
  await identityClient().membership.updateMany({ where: { personId, companyId, endedAt: null }, data: { endedAt: now() } })
}

/** Sets the language in which a person reads; null for the company's own. */
export async function setLanguage(personId: string, language: Language | null): Promise<void> {
  await identityClient().person.update({ where: { id: personId }, data: { language } })
}

/** Names of everyone who is or was a member of a company, by person. */
export async function memberNames(companyId: string): Promise<Map<string, string>> {
  const members = await identityClient().membership.findMany({
    where: { companyId },
    select: { personId: true, person: { select: { name: true } } },
  })
  return new Map(members.map((one) => [one.personId, one.person.name]))
}
