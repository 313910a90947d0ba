import { checkAmounts } from '../shared/check-amounts.ts'

/** Refuses a room or a payload that no vehicle has, and an unusual one without a reason. */
export function checkRoom({ volumeFt3, weightLb }: { volumeFt3: number; weightLb: number }, why: Record<string, string> | undefined): void {
  checkAmounts(
    {
      volumeFt3: { kind: 'vehicleRoom', value: volumeFt3, unit: 'ft3' },
      weightLb: { kind: 'payload', value: weightLb, unit: 'lb' },
    },
    why,
  )
}
