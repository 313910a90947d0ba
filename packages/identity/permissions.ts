import type { Role } from '@almanac/records/role'
/** What a procedure may demand: action and entity. A misspelt one does not compile. */
export type Permission =
  | 'read:due'
  | 'judge:forecast'
  | 'read:site'
  | 'change:site'
  | 'read:water'
  | 'change:water'
  | 'run:import'
  | 'propose:job'
  | 'read:job'
  | 'book:visit'
  | 'manage:crews'
  | 'read:own-work'
  | 'close:visit'
  | 'read:reminder'
  | 'decide:reminder'
  | 'read:stores'
  | 'change:stores'
  | 'read:audit'
  | 'manage:company'

const TECHNICIAN: Permission[] = ['read:site', 'read:water', 'read:job', 'read:own-work', 'close:visit', 'read:stores']
const DISPATCHER: Permission[] = [
  ...TECHNICIAN,
  'read:due',
  'change:site',
  'change:water',
  'propose:job',
  'book:visit',
  'manage:crews',
  'read:reminder',
  'change:stores',
]
const OWNER: Permission[] = [...DISPATCHER, 'judge:forecast', 'run:import', 'decide:reminder', 'read:audit', 'manage:company']

const PERMISSIONS: Record<Role, ReadonlySet<Permission>> = {
  technician: new Set(TECHNICIAN),
  dispatcher: new Set(DISPATCHER),
  owner: new Set(OWNER),
}

/** Whether a role carries a permission. */
export function may(role: Role, permission: Permission): boolean {
  return PERMISSIONS[role].has(permission)
}

/** All permissions of a role, for screens that hide what would be refused. */
export function permissionsOf(role: Role): Permission[] {
  return [...PERMISSIONS[role]]
}
