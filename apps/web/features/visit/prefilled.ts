import { type BeadCondition, beadConditions } from '@almanac/records/bead-condition'
import { oneOf } from '@almanac/records/choices'
import type { EndCause } from '@almanac/records/end-cause'
import type { TankCondition, VisitAskId } from '@almanac/records/procedure-ask'
import type { Answers } from '@almanac/service-rules/close-out/record-from-answers'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { clockIn, dayIn, instantAt } from '@almanac/units/calendar/zone-clock'
import type { Words } from '@almanac/words/words'
import { type Draft, type DraftField, type ShownDraft, shownText, shownTick } from './draft.ts'

/** The cause that old beads point to; the technician may choose another. Firm ones point to none. Common practice, no source. */
const CAUSE_OF_BEADS: Record<BeadCondition, EndCause | null> = {
  firm: null,
  'some-soft': 'oxidised',
  mushy: 'oxidised',
  broken: 'worn',
  'iron-fouled': 'iron-fouled',
  'resin-missing': 'beads-lost',
}

/** The end of the bed as the steps tell it: why, and what shows it. */
function endBySteps(answers: Answers, beadWords: Words<'beadCondition'>): { endCause: EndCause | ''; evidence: string } {
  const beads = oneOf(beadConditions, answers['old-beads']?.text ?? '')
  const cause = beads ? CAUSE_OF_BEADS[beads] : null
  const cracked: TankCondition = 'cracked'
  return {
    endCause: answers['tank-condition']?.text === cracked ? 'tank-cracked' : (cause ?? ''),
    evidence: beads && cause ? beadWords(beads) : '',
  }
}

/** The day that work begun at an instant counts for, in the company's zone: work that runs past midnight is of the evening before. */
function dayOfWork(draft: Pick<Draft, 'startedAt' | 'finishedAt'>, timeZone: string, now: string): string {
  return dayIn(timeZone, draft.startedAt ?? draft.finishedAt ?? now)
}

/** When the work began or ended: as the tablet noted it, else at the clock that somebody typed, on the day of the work; null where it was cleared. */
function correctedAt(clock: DraftField<string>, noted: string | null, day: string, timeZone: string): string | null {
  if (clock.state === 'untouched') return noted
  return clock.state === 'set' && /^\d{2}:\d{2}$/.test(clock.value) ? instantAt(timeZone, day, clock.value).toISOString() : null
}

/** Begin and end of the work; an end before the begin is of the day after. */
function hoursOf(draft: Draft, day: string, { timeZone, now }: Pick<Showing, 'timeZone' | 'now'>) {
  const startedAt = correctedAt(draft.beganClock, draft.startedAt, day, timeZone)
  const noted = draft.finishedAt ?? now
  const ended = correctedAt(draft.endedClock, noted, day, timeZone)
  const turned = draft.endedClock.state === 'set' && startedAt !== null && ended !== null && ended < startedAt
  const finishedAt = turned ? correctedAt(draft.endedClock, noted, addDays(day, 1), timeZone) : ended
  const clockOf = (at: string | null) => (at === null ? '' : clockIn(timeZone, at))
  return {
    startedAt,
    finishedAt,
    beganClock: shownText(draft.beganClock, clockOf(startedAt)),
    endedClock: shownText(draft.endedClock, clockOf(finishedAt)),
  }
}

/** The company's zone, the present instant, and how beads are named to the technician. */
export type Showing = { timeZone: string; now: string; beadWords: Words<'beadCondition'> }

/** The closing form as shown: what was typed, ticked or cleared in it, and what the steps and the clock say of fields that nobody touched. */
export function shownDraft(draft: Draft, { timeZone, now, beadWords }: Showing): ShownDraft {
  const { answers } = draft
  const text = (id: VisitAskId) => answers[id]?.text ?? ''
  const unit = (id: VisitAskId) => answers[id]?.unit ?? ''
  const why = (id: VisitAskId) => answers[id]?.why ?? ''
  const end = endBySteps(answers, beadWords)
  const workDay = shownText(draft.workDay, dayOfWork(draft, timeZone, now))
  return {
    ...draft,
    takenOut: shownTick(draft.takenOut, text('old-tube-length-in') !== '' || text('old-tank-out') === 'yes'),
    endCause: shownText(draft.endCause, end.endCause),
    evidence: shownText(draft.evidence, end.evidence),
    volume: shownText(draft.volume, text('resin-ft3')),
    volumeUnit: shownText(draft.volumeUnit, unit('resin-ft3')),
    volumeWhy: shownText(draft.volumeWhy, why('resin-ft3')),
    gravel: shownText(draft.gravel, text('gravel-lb')),
    gravelUnit: shownText(draft.gravelUnit, unit('gravel-lb')),
    gravelWhy: shownText(draft.gravelWhy, why('gravel-lb')),
    tube: shownText(draft.tube, text('new-tube-length-in')),
    tubeUnit: shownText(draft.tubeUnit, unit('new-tube-length-in')),
    tubeWhy: shownText(draft.tubeWhy, why('new-tube-length-in')),
    workDay,
    ...hoursOf(draft, workDay, { timeZone, now }),
  }
}
