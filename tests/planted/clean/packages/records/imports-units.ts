import type { UnitSystem } from '@almanac/units/unit-system'

export type System = UnitSystem
