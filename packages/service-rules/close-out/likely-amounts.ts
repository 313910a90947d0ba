import type { MeasurementKind } from '@almanac/records/measurement-kind'
import { type AmountKind, stockRule } from '@almanac/units/amount-kinds'
import type { AmountSaid } from '@almanac/units/amount-said'
import { type Judgement, judgeAmount, odd } from '@almanac/units/judge-amount'
import { judgeInTank, type TankRoom } from '../amounts/judge-in-tank.ts'
import { type AmountWords, sayAmount } from '../amounts/say-amount.ts'
import type { CloseOutRecord, NewBedFacts } from './close-out-form.ts'

/** What is measured, as an amount in the unit it is kept in. */
export const MEASURED_AS: Record<MeasurementKind, { kind: AmountKind; unit: string; times?: number }> = {
  outletHardnessGpg: { kind: 'hardness', unit: 'gpg' },
  rawHardnessGpg: { kind: 'hardness', unit: 'gpg' },
  inletFreeChlorineMgL: { kind: 'chlorine', unit: 'mg/L' },
  inletTotalChlorineMgL: { kind: 'chlorine', unit: 'mg/L' },
  rawIronMgL: { kind: 'iron', unit: 'mg/L' },
  capacityShare: { kind: 'capacityShare', unit: '%', times: 100 },
  beadMoisturePercent: { kind: 'moistureShare', unit: '%' },
  pressurePsi: { kind: 'pressure', unit: 'psi' },
  serviceDropPsi: { kind: 'pressureDrop', unit: 'psi' },
  backwashGpm: { kind: 'backwash', unit: 'gpm' },
}

/** Names of the new bed's amounts that may be insisted on. */
export type NewBedAmount = 'volume' | 'gravel' | 'tubeCut'

/**
 * What in a record cannot be, and what is unusual and comes without a reason, in sentences. `tank` is the tank as recorded: the crew stands before the
 * real one, so that what does not go into it is asked back and not refused out of hand.
 */
export function unlikelyAmounts(record: CloseOutRecord, tank: TankRoom | null, amounts: AmountWords): string[] {
  const say = (found: readonly AmountSaid[]) => found.map((one) => sayAmount(one, amounts))
  const measured = record.measurements.flatMap(({ kind, value, why }) => {
    const { kind: amount, unit, times = 1 } = MEASURED_AS[kind]
    return value >= 0 ? said(judgeAmount(amount, value * times, unit), why) : []
  })
  const parts = record.partsUsed.flatMap(({ name, quantity, unit, why }) =>
    quantity > 0 ? say(said(judgeAmount(stockRule(unit), quantity, unit), why)).map((sentence) => `${name}: ${sentence}`) : [],
  )
  const found = [...measured, ...harderThanRaw(record), ...(record.newBed ? unlikelyBed(record.newBed, tank) : [])]
  return [...say(found), ...parts]
}

/** What leaves a softener is not harder than what goes in: the two were swapped, or one of them is in another unit. */
function harderThanRaw({ measurements }: CloseOutRecord): AmountSaid[] {
  const last = (kind: MeasurementKind) => measurements.filter((one) => one.kind === kind).at(-1)
  const [raw, outlet] = [last('rawHardnessGpg'), last('outletHardnessGpg')]
  if (!raw || !outlet || !(outlet.value > raw.value * 1.1 + 1)) return []
  return said(odd({ key: 'harderThanRaw' }), outlet.why ?? raw.why)
}

// What is missing altogether, or below zero, is named by the rules of completeness.
function unlikelyBed({ volumeFt3, gravelLb, tubeCutIn, why = {} }: NewBedFacts, tank: TankRoom | null): AmountSaid[] {
  const judge = (name: NewBedAmount, kind: 'resin' | 'gravel' | 'tube', value: number | null, unit: string) => {
    if (value === null || !(value > 0)) return []
    const general = judgeAmount(kind, value, unit)
    const inTank = general.state !== 'impossible' && tank ? judgeInTank(kind, value, unit, tank, { onSite: true }) : general
    return said(inTank.state === 'usual' ? general : inTank, why[name])
  }
  return [
    ...judge('volume', 'resin', volumeFt3, 'ft3'),
    ...judge('gravel', 'gravel', gravelLb, 'lb'),
    ...judge('tubeCut', 'tube', tubeCutIn, 'in'),
  ]
}

function said(judged: Judgement, why: string | undefined): AmountSaid[] {
  if (judged.state === 'usual' || (judged.state === 'odd' && (why ?? '').trim().length >= 3)) return []
  return [judged.said]
}
