/** A person's place in a company. */
export const roles = ['owner', 'dispatcher', 'technician'] as const
export type Role = (typeof roles)[number]

export const roleWords: Readonly<Record<Role, string>> = { owner: 'owner', dispatcher: 'dispatcher', technician: 'technician' }

/** What each may do, for whoever gives a role. */
export const roleHints: Readonly<Record<Role, string>> = {
  owner: 'Everything, with people, prices and imports',
  dispatcher: 'Customers, jobs, day sheets, crews and stores',
  technician: 'Their own visits; sites to look things up',
}
