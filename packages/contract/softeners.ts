import { arrangements } from '@almanac/records/arrangement'
import { recordedResinKinds } from '@almanac/records/resin-kind'
import { recordedValveControls } from '@almanac/records/valve-control'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { Day, Id } from './shared.ts'
import { TankLine } from './site-facts.ts'

/** A value of the water at the softener: by its newest test there, else as the supply delivers it. */
export const WaterFact = z.object({ value: z.number(), from: z.enum(['test', 'supply']), day: Day.nullable() })
export type WaterFact = z.infer<typeof WaterFact>

export const SettingsTank = TankLine.omit({ version: true }).extend({
  bed: z
    .object({
      id: Id,
      resinKind: z.enum(recordedResinKinds),
      volumeFt3: z.number().nullable(),
      gravelLb: z.number().nullable(),
      tubeCutIn: z.number().nullable(),
      beganEarliest: Day.nullable(),
      beganLatest: Day.nullable(),
    })
    .nullable(),
  valve: z
    .object({
      label: z.string(),
      control: z.enum(recordedValveControls),
      backwashGpm: z.number().nullable(),
      tubeOdIn: z.number().nullable(),
      cardId: z.string().nullable(),
    })
    .nullable(),
})
export type SettingsTank = z.infer<typeof SettingsTank>

/** All that the record says for setting a softener. Temperatures are the lowest and the highest known. */
export const SoftenerSettings = z.object({
  id: Id,
  label: z.string(),
  arrangement: z.enum(arrangements),
  peopleServed: z.number().nullable(),
  site: z.object({ id: Id, label: z.string(), town: z.string().nullable() }),
  supplyName: z.string().nullable(),
  tanks: z.array(SettingsTank),
  water: z.object({
    hardnessGpg: WaterFact.nullable(),
    ironMgL: WaterFact.nullable(),
    manganeseMgL: WaterFact.nullable(),
    dissolvedSolidsMgL: WaterFact.nullable(),
    coldestC: WaterFact.nullable(),
    warmestC: WaterFact.nullable(),
  }),
})
export type SoftenerSettings = z.infer<typeof SoftenerSettings>

export const softeners = {
  settings: oc
    .route({ method: 'GET', path: '/softeners/{softenerId}/settings' })
    .input(z.object({ softenerId: Id }))
    .output(SoftenerSettings),
}
