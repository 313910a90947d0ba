import { identityClient } from '@almanac/database/client'

/** Everyone who is or was a member of a company, as they go out with everything: no password, no session, nothing else of how they sign in. */
export async function exportedPeople(companyId: string) {
  const members = await identityClient().membership.findMany({
    where: { companyId },
    select: {
      ...{ personId: true, role: true, createdAt: true, endedAt: true },
      person: { select: { name: true, email: true, language: true } },
    },
    orderBy: { createdAt: 'asc' },
  })
  return members.map(({ personId, role, createdAt, endedAt, person }) => ({ personId, ...person, role, joinedAt: createdAt, endedAt }))
}
