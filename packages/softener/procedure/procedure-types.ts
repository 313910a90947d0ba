import type { TwinTank } from '@almanac/records/arrangement'
import type { CautionKind } from '@almanac/records/caution-kind'
import type { JobKind } from '@almanac/records/job-kind'
import type { EmergencyKind, ProcedureAskId } from '@almanac/records/procedure-ask'
import type { ProcedureStepId } from '@almanac/records/procedure-step'
import type { ResinKindId } from '@almanac/records/resin-kind'
import type { AmountKind } from '@almanac/units/amount-kinds'
import type { AmountDisplay } from '@almanac/units/display'
import type { FirmFigures } from '../firm/firm-figures.ts'
import type { SiteAccess } from '../kit/job-weight.ts'

/** Stands before the step it belongs to, never after. */
export type StepCaution = { kind: CautionKind; text: string }

/**
 * What the technician records at a step. `unit` is the unit a number is stored in, also
 * named in its id; a screen may take it in another unit and convert. `choices` are the answers of a choice, as stored and as shown.
 */
export type Ask = {
  id: ProcedureAskId
  label: string
  kind: 'confirm' | 'number' | 'choice'
  unit: string | null
  /** What a number is, and so what it may be; null for other answers. */
  amount: AmountKind | null
  choices: { value: string; label: string }[]
  required: boolean
}

/**
 * Show the cautions, then title and text, then what is asked. `minutes` is an estimate for the crew (common practice, no source); `waitMinutes` is how long something
 * has to run before the answer means anything, null where nothing has to.
 */
export type ProcedureStep = {
  id: ProcedureStepId
  title: string
  /** The amount that it puts in or the length that it cuts to, to be read at arm's length; null where there is none, or none is known. */
  dose: string | null
  text: string
  cautions: StepCaution[]
  asks: Ask[]
  minutes: number
  waitMinutes: number | null
}

export type ProcedureKind = Exclude<JobKind, 'warranty-return'>

export type Procedure = {
  kind: ProcedureKind
  title: string
  steps: ProcedureStep[]
  minutes: number
  /** What was taken for granted because it is not recorded. */
  assumptions: string[]
  sources: string[]
}

/** What is known of the tank and the site; null or left out where it is not: the steps then cover both cases. */
export type ProcedureContext = {
  diameterIn?: number | null
  heightIn?: number | null
  nominalGrains?: number | null
  resinVolumeFt3?: number | null
  resinKind?: ResinKindId | null
  gravelLb?: number | null
  /** As the kit says: it knows which of the recorded and the computed length counts. */
  newTubeLengthIn?: number | null
  hasBypass?: boolean | null
  valveNeedsPower?: boolean | null
  metalPipe?: boolean | null
  pressurePsi?: number | null
  waterSource?: 'town' | 'private-well' | null
  drain?: 'standpipe' | 'sump' | 'septic' | 'other' | null
  ironMgL?: number | null
  access?: SiteAccess | null
  /** Which of several tanks; null or left out for a softener of one. */
  twin?: TwinTank | null
  /** An earlier visit took the bed out and left the tank without one. */
  emptied?: boolean
  /** What an emergency turned out to be; null until somebody has said. */
  emergency?: EmergencyKind | null
  /** The firm's own tank table and limit at the outlet; the usual ones where not given. */
  figures?: Pick<FirmFigures, 'tanks' | 'outletLimitGpg'> | null
  display: AmountDisplay
}
