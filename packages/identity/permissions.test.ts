import { type Permission, permissions } from '@almanac/records/permission'
import type { Role } from '@almanac/records/role'
import { describe, expect, test } from 'vitest'
import { may, permissionsOf } from './permissions.ts'

test('a misspelt permission compiles nowhere, and the owner has each there is', () => {
  // @ts-expect-error: this line is the check, and the compiler makes it: it fails where the misspelt one is taken
  const misspelt: Permission = 'read:sites'
  expect(permissions).not.toContain(misspelt)
  expect(permissionsOf('owner').sort()).toEqual([...permissions].sort())
})

describe('permissions', () => {
  // Who does what in the house: the office plans and records, the crew works and closes out, the owner decides what leaves the house.
  test.each<[Permission, Role[]]>([
    ['close:visit', ['owner', 'dispatcher', 'technician']],
    ['read:site', ['owner', 'dispatcher', 'technician']],
    ['change:site', ['owner', 'dispatcher']],
    ['book:visit', ['owner', 'dispatcher']],
    ['read:due', ['owner', 'dispatcher']],
    ['run:import', ['owner']],
    ['decide:reminder', ['owner']],
    ['send:message', ['owner', 'dispatcher']],
    ['manage:company', ['owner']],
  ])('%s: %j', (permission, roles) => {
    expect((['owner', 'dispatcher', 'technician'] as const).filter((role) => may(role, permission))).toEqual(roles)
  })
  test('a dispatcher may all that a technician may, an owner all that a dispatcher may', () => {
    expect(permissionsOf('dispatcher')).toEqual(expect.arrayContaining(permissionsOf('technician')))
    expect(permissionsOf('owner')).toEqual(expect.arrayContaining(permissionsOf('dispatcher')))
  })
})
