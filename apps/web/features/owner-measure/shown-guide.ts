import type { GuideMeasure } from '@almanac/records/guide-measure'
import type { GuideEnd, GuideState } from '@almanac/records/guide-state'
import type { GuidePhotographKind } from '@almanac/records/picture-kind'
import type { Opening } from '@almanac/service-rules/close-out/safe-ending'
import type { OwnerStep } from '@almanac/softener/procedure/owner-sheet'

/** What an owner's page is drawn from: what the link's reader may know, and where its forms go. */
export type ShownGuide = {
  companyName: string
  telephone: string | null
  locale: string
  unitSystem: 'us' | 'metric'
  open: boolean
  state: GuideState
  entries: { measure: GuideMeasure; valueIn: number }[]
  photographs: GuidePhotographKind[]
  /** `before` is the step that can be looked back at; `now` is false where somebody does. */
  step: (OwnerStep & { number: number; total: number; now: boolean; before: string | null }) | null
  toFix: string | null
  left: { opening: Opening; heaterOff: boolean } | null
  ended: GuideEnd | null
  sendTo: string
}
