import type { DemandCurveId } from '@almanac/softener/flow/demand-curves'
import type { FixtureCounts } from '@almanac/softener/flow/fixture-units'
import type { ExpansionModel } from '@almanac/softener/hydraulics/bed-expansion'
import type { Salt } from '@almanac/softener/water/capacity'

/** What a person may change on the office's page of the card; it stands in its address, so that a card can be sent and returned to. Null: as recorded. */
export type CardChanges = {
  people: number | null
  hardnessGpg: number | null
  coldestF: number | null
  warmestF: number | null
  /** Null where not counted. */
  fixtures: FixtureCounts | null
  curve: DemandCurveId
  model: ExpansionModel
  salt: Salt
  control: 'meter' | 'timer' | null
  doseLbFt3: number | null
}

/** Nothing changed: by the expansion model and the salt that hold until somebody says otherwise. */
export const AS_RECORDED: CardChanges = {
  ...{ people: null, hardnessGpg: null, coldestF: null, warmestF: null, fixtures: null, control: null, doseLbFt3: null },
  ...{ curve: 'ipc', model: 'wen-yu', salt: 'NaCl' },
}
