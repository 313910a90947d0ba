import { describe, expect, test } from 'vitest'
import { readDegrees } from './read-degrees.ts'

describe('degrees', () => {
  test.each([
    ['41.8781', 'latitude', 41.8781],
    ['-87.6298', 'longitude', -87.6298],
    ['87.6298 W', 'longitude', -87.6298],
    ['87.6298° w', 'longitude', -87.6298],
    ['33,8688 S', 'latitude', -33.8688],
    ['+0', 'latitude', 0],
    ['179.9E', 'longitude', 179.9],
  ] as const)('%s as %s is %d', (text, which, degrees) => {
    expect(readDegrees(text, which)).toMatchObject({ ok: true, value: degrees })
  })
  test.each([
    ['91', 'latitude'],
    ['-181', 'longitude'],
    ['41 52 41', 'latitude'],
    ['41° 52\' 41"', 'latitude'],
    ['41.8781 E', 'latitude'],
    ['-87.63 W', 'longitude'],
    ['north', 'latitude'],
    ['', 'latitude'],
  ] as const)('%j as %s is refused with a sentence', (text, which) => {
    expect(readDegrees(text, which)).toMatchObject({ ok: false, reason: expect.stringContaining(`no ${which}`) })
  })
})
