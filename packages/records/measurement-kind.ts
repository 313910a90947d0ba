/** What can be measured on a visit; the unit of the canonical value is in the name. */
export const measurementKinds = [
  'outletHardnessGpg',
  'rawHardnessGpg',
  'inletFreeChlorineMgL',
  'inletTotalChlorineMgL',
  'rawIronMgL',
  'capacityShare',
  'beadMoisturePercent',
  'pressurePsi',
  'serviceDropPsi',
  'backwashGpm',
] as const
export type MeasurementKind = (typeof measurementKinds)[number]
