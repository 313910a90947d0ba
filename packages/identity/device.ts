import type { DeviceKind } from '@almanac/records/device-kind'
import Bowser from 'bowser'

/** What somebody signed in with: null where its browser does not say. */
export type Device = { kind: DeviceKind | null; browser: string | null; system: string | null }

const KINDS: Record<string, DeviceKind> = { desktop: 'computer', tablet: 'tablet', mobile: 'phone' }

/** What a browser says of itself, for people: never the string itself. */
export function deviceOf(userAgent: string | null): Device {
  if (!userAgent) return { kind: null, browser: null, system: null }
  const { browser, os, platform } = Bowser.parse(userAgent)
  return { kind: KINDS[platform.type ?? ''] ?? null, browser: browser.name || null, system: os.name || null }
}
