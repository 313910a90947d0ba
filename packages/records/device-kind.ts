/** What somebody signs in with, as far as its browser says. */
export const deviceKinds = ['computer', 'tablet', 'phone'] as const
export type DeviceKind = (typeof deviceKinds)[number]
