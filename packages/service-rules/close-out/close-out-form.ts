import type { BesideVisit } from '@almanac/records/beside-visit'
import type { EndCause } from '@almanac/records/end-cause'
import type { JobKind } from '@almanac/records/job-kind'
import type { MeasurementKind } from '@almanac/records/measurement-kind'
import type { ResinKindId } from '@almanac/records/resin-kind'
import type { VisitOutcome } from '@almanac/records/visit-outcome'

/** One step of the procedure as ticked on the tablet. */
export interface StepCheck {
  stepId: string
  confirmed: boolean
  /** Instant, ISO UTC, as the tablet had it. */
  confirmedAt?: string
  note?: string
}

export interface Measurement {
  kind: MeasurementKind
  value: number
  /** As typed, kept beside the canonical value. */
  enteredValue: number
  enteredUnit: string
  /** Why it is right, where it is unusual. */
  why?: string
}

export interface PartUsed {
  /** Null for something bought on the way, which is then named. */
  stockItemId: string | null
  name: string
  quantity: number
  unit: string
  /** Why it is right, where it is unusual. */
  why?: string
}

/** The bed that was in the tank when the crew came. */
export interface OldBedEnd {
  takenOut: boolean
  endCause: EndCause | null
  /** Why the cause was chosen: soft beads, orange rinse, broken basket. */
  evidence: string
}

export interface NewBedFacts {
  resinKind: ResinKindId
  volumeFt3: number
  /** As typed, kept beside the canonical value. */
  enteredVolume: { value: number; unit: 'ft3' | 'L' }
  /** Zero where none was put in. */
  gravelLb: number
  tubeCutIn: number | null
  /** Why an unusual amount is right, by its name. */
  why?: Record<string, string>
}

/** The record a technician makes to finish a visit. Instants are ISO UTC, days ISO days in the company's zone. */
export interface CloseOutRecord {
  visitId: string
  jobKind: JobKind
  outcome: VisitOutcome | null
  /** The day the work was done, which is when the old bed ends and the new one begins. */
  workDay: string
  startedAt: string | null
  finishedAt: string | null
  checks: StepCheck[]
  measurements: Measurement[]
  partsUsed: PartUsed[]
  oldBed: OldBedEnd | null
  newBed: NewBedFacts | null
  /** What was found, where the outcome needs it in words. */
  reason: string
  /** Why the outlet hardness stands above the limit, or could not be measured: one of `outletReasons`, or empty. */
  hardnessReason: string
  notes: string
  beside?: BesideVisit
}
