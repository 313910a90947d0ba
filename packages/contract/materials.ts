import { materialStates, materialWays } from '@almanac/records/stock'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Entered, Id, Instant, Version } from './shared.ts'

/** One item that a customer asked for, in the item's unit; `free` is what the stores have left of it once everybody has theirs. */
export const MaterialLine = z.object({
  id: Id,
  version: Version,
  stockItemId: Id,
  name: z.string(),
  unit: z.string(),
  priceMinor: z.number().int().nullable(),
  quantity: z.number(),
  returned: z.number(),
  state: z.enum(materialStates),
  way: z.enum(materialWays).nullable(),
  handedAt: Instant.nullable(),
  free: z.number(),
})
export type MaterialLine = z.infer<typeof MaterialLine>

const quantity = z.number().min(0).max(1_000_000)
const why = Entered.shape.why

/** How much of an item is set aside for a job: what was set aside before is replaced, and 0 takes it off. */
export const SetMaterial = command({ jobId: Id, jobVersion: Version, stockItemId: Id, quantity, why })
export type SetMaterial = z.infer<typeof SetMaterial>
/** The customer has all that is set aside, without a visit. */
export const HandOver = command({ jobId: Id, jobVersion: Version, way: z.enum(['collected', 'shipped']) })
export type HandOver = z.infer<typeof HandOver>
/** So much of it came back onto the shelf. */
export const TakeBack = command({ lineId: Id, version: Version, quantity: z.number().positive().max(1_000_000) })
export type TakeBack = z.infer<typeof TakeBack>

const JobNow = z.object({ jobId: Id, jobVersion: Version })

export const materials = {
  ofJob: oc
    .route({ method: 'GET', path: '/materials' })
    .input(z.object({ jobId: Id }))
    .output(z.object({ lines: z.array(MaterialLine) })),
  set: oc.route({ method: 'POST', path: '/materials/set' }).input(SetMaterial).output(JobNow),
  handOver: oc.route({ method: 'POST', path: '/materials/hand-over' }).input(HandOver).output(JobNow),
  takeBack: oc
    .route({ method: 'POST', path: '/materials/take-back' })
    .input(TakeBack)
    .output(z.object({ lineId: Id, version: Version })),
}
