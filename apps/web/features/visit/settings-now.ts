import type { SoftenerSettings, WaterFact } from '@almanac/contract/softeners'
import type { VisitPage } from '@almanac/contract/visits'
import { oneOf } from '@almanac/records/choices'
import type { VisitAskId } from '@almanac/records/procedure-ask'
import { resinKinds } from '@almanac/records/resin-kind'
import { beginsNewBed } from '@almanac/service-rules/jobs/visit-outcomes'
import type { Draft } from './draft.ts'

/**
 * What a softener's settings are worked out from, as the crew knows it by now: the tank as found, what was poured into it, the water as measured; the rest as on record.
 * Null where the visit is for no softener on record, and on pages that a tablet kept from a release before.
 */
export function settingsNow(
  { settings, bed, twin, kind }: Pick<VisitPage, 'settings' | 'bed' | 'twin' | 'kind'>,
  { answers, resinKind }: Pick<Draft, 'answers' | 'resinKind'>,
  today: string,
): SoftenerSettings | null {
  if (!settings) return null
  const measured = (id: VisitAskId) => answers[id]?.value ?? null
  const tested = (id: VisitAskId, before: WaterFact | null): WaterFact | null => {
    const value = measured(id)
    return value === null ? before : { value, from: 'test', day: today }
  }
  const water = {
    ...settings.water,
    hardnessGpg: tested('hardness-raw-gpg', settings.water.hardnessGpg),
    ironMgL: tested('iron-mg-l', settings.water.ironMgL),
  }
  const tank =
    settings.tanks.find((one) => one.bed?.id === bed?.bedId) ??
    settings.tanks.find((one) => one.position === twin?.position) ??
    settings.tanks[0]
  if (!bed || !tank) return { ...settings, water }
  const age = beginsNewBed(kind)
    ? { beganEarliest: today, beganLatest: today }
    : { beganEarliest: tank.bed?.beganEarliest ?? null, beganLatest: tank.bed?.beganLatest ?? null }
  const { diameterIn, heightIn, nominalGrains } = bed
  const filled = {
    ...{ id: bed.bedId, resinKind: oneOf(resinKinds, resinKind) ?? bed.resinKind, volumeFt3: measured('resin-ft3') ?? bed.volumeFt3 },
    ...{ gravelLb: measured('gravel-lb') ?? bed.gravelLb, tubeCutIn: measured('new-tube-length-in') ?? bed.tubeCutIn },
  }
  return { ...settings, water, tanks: [{ ...tank, diameterIn, heightIn, nominalGrains, bed: { ...filled, ...age } }] }
}
