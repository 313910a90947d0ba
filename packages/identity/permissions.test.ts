import { type Permission, permissions } from '@almanac/records/permission'
import { expect, test } from 'vitest'
import { permissionsOf } from './permissions.ts'

test('a misspelt permission compiles nowhere, and the owner has each there is', () => {
  // @ts-expect-error: this line is the check, and the compiler makes it: it fails where the misspelt one is taken
  const misspelt: Permission = 'read:sites'
  expect(permissions).not.toContain(misspelt)
  expect(permissionsOf('owner').sort()).toEqual([...permissions].sort())
})
