import type { JobKind } from '../jobs/job-kinds.ts'
import type { VisitOutcome } from '../jobs/visit-outcomes.ts'

/** Why a bed ended. */
export const endCauses = ['worn', 'iron-fouled', 'beads-lost', 'oxidised', 'tank-cracked', 'removed-for-convenience', 'unknown'] as const
export type EndCause = (typeof endCauses)[number]

export interface EndCauseFacts {
  cause: EndCause
  title: string
  /** Whether resin failed of itself, had outlived its service when something else ended it, or nobody can say. */
  lifeEvidence: 'failed' | 'outlived' | 'unclear'
}

/**
 * Only worn, fouled and oxidised beds say how long resin lasts. Beads lost through a broken distributor, a cracked tank and a removal for convenience
 * cut a life short for another reason: such a bed had lasted at least until then.
 */
export const endCauseFacts: Record<EndCause, EndCauseFacts> = {
  worn: { cause: 'worn', title: 'Worn out', lifeEvidence: 'failed' },
  'iron-fouled': { cause: 'iron-fouled', title: 'Fouled by iron', lifeEvidence: 'failed' },
  'beads-lost': { cause: 'beads-lost', title: 'Beads lost (broken distributor)', lifeEvidence: 'outlived' },
  oxidised: { cause: 'oxidised', title: 'Damaged by oxidant (soft, swollen beads)', lifeEvidence: 'failed' },
  'tank-cracked': { cause: 'tank-cracked', title: 'Tank frozen or cracked', lifeEvidence: 'outlived' },
  'removed-for-convenience': { cause: 'removed-for-convenience', title: 'Removed for convenience', lifeEvidence: 'outlived' },
  unknown: { cause: 'unknown', title: 'Not known', lifeEvidence: 'unclear' },
}

/** One step of the procedure as ticked on the tablet. */
export interface StepCheck {
  stepId: string
  confirmed: boolean
  /** Instant, ISO UTC, as the tablet had it. */
  confirmedAt?: string
  note?: string
}

/** What can be measured on a visit; the unit of the canonical value is in the name. */
export type MeasurementKind =
  | 'outletHardnessGpg'
  | 'rawHardnessGpg'
  | 'inletFreeChlorineMgL'
  | 'inletTotalChlorineMgL'
  | 'rawIronMgL'
  | 'capacityShare'
  | 'beadMoisturePercent'
  | 'pressurePsi'
  | 'serviceDropPsi'
  | 'backwashGpm'

export interface Measurement {
  kind: MeasurementKind
  value: number
  /** As typed, kept beside the canonical value. */
  enteredValue: number
  enteredUnit: string
}

export interface PartUsed {
  /** Null for something bought on the way, which is then named. */
  stockItemId: string | null
  name: string
  quantity: number
  unit: string
}

/** The bed that was in the tank when the crew came. */
export interface OldBedEnd {
  takenOut: boolean
  endCause: EndCause | null
  /** Why the cause was chosen: soft beads, orange rinse, broken basket. */
  evidence: string
}

export interface NewBedFacts {
  resinKind: 'gel-8' | 'gel-10' | 'fine-mesh'
  volumeFt3: number
  /** As typed, kept beside the canonical value. */
  enteredVolume: { value: number; unit: 'ft3' | 'L' }
  /** Zero where none was put in. */
  gravelLb: number
  tubeCutIn: number | null
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
  /** Why the outlet hardness stands above the limit, or could not be measured. */
  hardnessReason: string
  notes: string
}
