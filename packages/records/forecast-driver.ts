/** What took or gave a bed years. */
export const driverKeys = [
  'free-chlorine',
  'chloramine',
  'iron',
  'crosslink',
  'throughput',
  'temperature',
  'supply',
  'carbon',
  'inspection',
] as const
export type DriverKey = (typeof driverKeys)[number]
