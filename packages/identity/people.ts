import { identityClient } from '@almanac/database/client'
import type { Language } from '@almanac/records/language'
import type { Role } from '@almanac/records/role'
import { now } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { hashInTurn } from './password-queue.ts'
import { refuseWeakPassword } from './password-rules.ts'

/** Adds a person with a password, for set-up and the demo. Answers the person's id; an existing e-mail keeps its person. */
export async function addPerson(input: { name: string; email: string; password: string }): Promise<string> {
  const email = input.email.toLowerCase()
  const existing = await identityClient().person.findUnique({ where: { email } })
  if (existing) return existing.id
  const id = newId()
  await refuseWeakPassword(input.password)
  const password = await hashInTurn(input.password)
  await identityClient().person.create({
    data: {
      id,
      name: input.name,
      email,
      emailVerified: true,
      accounts: { create: { id: newId(), accountId: id, providerId: 'credential', password } },
    },
  })
  return id
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
