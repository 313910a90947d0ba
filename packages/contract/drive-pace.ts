import { PACE_BOUNDS } from '@almanac/records/drive-pace'
import * as z from 'zod'
import { command, Id, SeenVersion, Version } from './shared.ts'

const factor = z.number().min(PACE_BOUNDS.least).max(PACE_BOUNDS.most)

/** `DrivePace` of the records, as it goes over the wire. */
export const DrivePace = z.object({
  factor,
  shortFactor: factor,
  longFactor: factor,
  roadFactor: factor,
  drives: z.number().int().min(0),
  days: z.number().int().min(0),
})

/** What drives are worked out with, and what the recorded ones of the last year say. */
export const DrivesLearned = z.object({
  /** The one that the screen saw, 0 where none was ever taken over. */
  version: SeenVersion,
  inUse: DrivePace.nullable(),
  /** Null while there are too few recorded drives, or they are of too few days. */
  found: DrivePace.nullable(),
  recorded: z.object({ used: z.number().int(), days: z.number().int(), setAside: z.number().int() }),
})
export type DrivesLearned = z.infer<typeof DrivesLearned>

/** `pace` is the one on the screen: what is taken over is what was shown. */
export const TakeDrivesInput = command({ version: SeenVersion, pace: DrivePace })
export type TakeDrivesInput = z.infer<typeof TakeDrivesInput>
export const DrivesTaken = z.object({ id: Id, version: Version })
