/** A person's place in a company. */
export const roles = ['owner', 'dispatcher', 'technician'] as const
export type Role = (typeof roles)[number]
