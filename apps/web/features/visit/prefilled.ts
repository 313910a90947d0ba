import { dayIn } from '@/client/clock-words'
import { type Draft, type ShownDraft, shownText, shownTick } from './draft.ts'

/** Old beads as found, and the cause they point to; the technician may choose another. */
const CAUSE_OF_BEADS: Record<string, { endCause: string; evidence: string } | undefined> = {
  soft: { endCause: 'oxidised', evidence: 'soft beads, crush between the fingers' },
  broken: { endCause: 'worn', evidence: 'broken beads, many fines' },
  iron: { endCause: 'iron-fouled', evidence: 'rust-coloured beads' },
  short: { endCause: 'beads-lost', evidence: 'much resin missing' },
}

/** The day that work begun at an instant counts for, in the company's zone: work that runs past midnight is of the evening before. */
export function dayOfWork(draft: Pick<Draft, 'startedAt' | 'finishedAt'>, timeZone: string, now: string): string {
  return dayIn(timeZone, draft.startedAt ?? draft.finishedAt ?? now)
}

/** The closing form as shown: what was typed, ticked or cleared in it, and what the steps and the clock say of fields that nobody touched. */
export function shownDraft(draft: Draft, timeZone: string, now: string): ShownDraft {
  const { answers } = draft
  const text = (id: string) => answers[id]?.text ?? ''
  const unit = (id: string) => answers[id]?.unit ?? ''
  const why = (id: string) => answers[id]?.why ?? ''
  const beads = CAUSE_OF_BEADS[text('old-beads')]
  return {
    ...draft,
    takenOut: shownTick(draft.takenOut, text('old-tube-length-in') !== ''),
    endCause: shownText(draft.endCause, text('tank-condition') === 'cracked' ? 'tank-cracked' : (beads?.endCause ?? '')),
    evidence: shownText(draft.evidence, beads?.evidence ?? ''),
    volume: shownText(draft.volume, text('resin-ft3')),
    volumeUnit: shownText(draft.volumeUnit, unit('resin-ft3')),
    volumeWhy: shownText(draft.volumeWhy, why('resin-ft3')),
    gravel: shownText(draft.gravel, text('gravel-lb')),
    gravelUnit: shownText(draft.gravelUnit, unit('gravel-lb')),
    gravelWhy: shownText(draft.gravelWhy, why('gravel-lb')),
    tube: shownText(draft.tube, text('new-tube-length-in')),
    tubeUnit: shownText(draft.tubeUnit, unit('new-tube-length-in')),
    tubeWhy: shownText(draft.tubeWhy, why('new-tube-length-in')),
    workDay: shownText(draft.workDay, dayOfWork(draft, timeZone, now)),
  }
}
