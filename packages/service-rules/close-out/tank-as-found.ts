import type { FoundSize } from '@almanac/records/procedure-ask'
import { readAmount } from '@almanac/units/read-amount'
import type { StepCheck } from './close-out-form.ts'

/** A tank's nominal size, in inches; null where it is not known. */
export type TankSize = { diameterIn: number | null; heightIn: number | null }

/** What is asked of a found size, as an amount. */
export const FOUND_AS = { 'found-diameter-in': 'tankDiameter', 'found-height-in': 'tankHeight' } as const satisfies Record<
  FoundSize,
  string
>

/** The size on record, with what the crew measured otherwise in its place, of a record's answers as typed in the company's way: on the tablet and at the office alike. */
export function tankAsFound(recorded: TankSize, checks: readonly Pick<StepCheck, 'stepId' | 'note'>[], locale: string): TankSize {
  const measured = (ask: FoundSize) => {
    const reading = readAmount(FOUND_AS[ask], checks.find((one) => one.stepId === ask)?.note ?? '', { locale })
    return reading.state === 'read' ? reading.value : null
  }
  return {
    diameterIn: measured('found-diameter-in') ?? recorded.diameterIn,
    heightIn: measured('found-height-in') ?? recorded.heightIn,
  }
}
