import type { Permission } from '@almanac/records/permission'
import type { Role } from '@almanac/records/role'

const TECHNICIAN: Permission[] = ['read:site', 'read:water', 'read:job', 'read:own-work', 'close:visit', 'read:stores']
const DISPATCHER: Permission[] = [
  ...TECHNICIAN,
  'read:due',
  'change:site',
  'change:water',
  'propose:job',
  'book:visit',
  'record:call',
  'manage:crews',
  'read:reminder',
  'send:message',
  'change:stores',
]
const OWNER: Permission[] = [...DISPATCHER, 'judge:forecast', 'run:import', 'decide:reminder', 'manage:company']

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
