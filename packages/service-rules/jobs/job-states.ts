import type { JobState } from '@almanac/records/job-state'

/**
 * What can happen to a job. `book` puts its visit on a day sheet, `move` takes that visit elsewhere, `unbook` takes it off: a job has one open
 * visit at most. `start` is a crew beginning, `unstart` takes back a start by mistake, `close` and `return` are what the outcome of a visit does, `hold` waits for something with a
 * reason, `hand-over` ends a job whose materials were collected or shipped, without a visit, `release` ends the wait, `call-off` ends the job undone, `revive` brings a called-off job back.
 */
export const jobEvents = [
  'book',
  'move',
  'unbook',
  'start',
  'unstart',
  'close',
  'return',
  'hand-over',
  'hold',
  'release',
  'call-off',
  'revive',
] as const
export type JobEvent = (typeof jobEvents)[number]

export type JobStep = { ok: true; state: JobState } | { ok: false; reason: string }

const to = (state: JobState): JobStep => ({ ok: true, state })
const no = (reason: string): JobStep => ({ ok: false, reason })

const notBooked = 'This job has no visit on a day sheet. Book one first.'
const hasVisit = 'This job already has a visit on a day sheet. Move that visit, or take it off first.'
const notBegun = 'No visit of this job is under way.'
const notHeld = 'This job isn’t on hold.'
const notCalledOff = 'Only a job that was called off can be reopened. This one wasn’t.'
const crewAtWork = 'A crew is working on this job. Close out the visit first.'
const onSheet = 'A visit of this job is on a day sheet. Take it off first, or let that crew deliver.'
const held = 'This job is on hold. Take it off hold first.'
const closed = 'This job is closed and its record is kept. Add a new job for what’s left to do.'
const calledOff = 'This job was called off. Reopen it first.'

/**
 * Every state against every event. `hold` and `call-off` of a booked job are allowed because the office does them in one breath when a
 * customer rings; the operation that does so also takes the visit off its day sheet. `close` and `return` of a job that is only
 * booked are allowed because a tablet without signal may deliver the close-out although "started" never arrived.
 */
const jobStateTable: Record<JobState, Record<JobEvent, JobStep>> = {
  proposed: {
    book: to('booked'),
    move: no(notBooked),
    unbook: no(notBooked),
    start: no(notBooked),
    unstart: no(notBegun),
    close: no(notBooked),
    return: no(notBooked),
    'hand-over': to('closed'),
    hold: to('held'),
    release: no(notHeld),
    'call-off': to('called-off'),
    revive: no(notCalledOff),
  },
  booked: {
    book: no(hasVisit),
    move: to('booked'),
    unbook: to('proposed'),
    start: to('under-way'),
    unstart: no(notBegun),
    close: to('closed'),
    return: to('proposed'),
    'hand-over': no(onSheet),
    hold: to('held'),
    release: no(notHeld),
    'call-off': to('called-off'),
    revive: no(notCalledOff),
  },
  'under-way': {
    book: no(crewAtWork),
    move: no(crewAtWork),
    unbook: no(crewAtWork),
    start: no('This job is already under way.'),
    unstart: to('booked'),
    close: to('closed'),
    return: to('proposed'),
    'hand-over': no(crewAtWork),
    hold: no(crewAtWork),
    release: no(notHeld),
    'call-off': no(crewAtWork),
    revive: no(notCalledOff),
  },
  held: {
    book: no(held),
    move: no(held),
    unbook: no(notBooked),
    start: no(held),
    unstart: no(notBegun),
    close: no(held),
    return: no(held),
    'hand-over': no(held),
    hold: no('This job is already on hold.'),
    release: to('proposed'),
    'call-off': to('called-off'),
    revive: no(notCalledOff),
  },
  closed: {
    book: no(closed),
    move: no(closed),
    unbook: no(closed),
    start: no(closed),
    unstart: no(notBegun),
    close: no('This job is already closed.'),
    return: no(closed),
    'hand-over': no('This job is already closed.'),
    hold: no(closed),
    release: no(closed),
    'call-off': no(closed),
    revive: no(closed),
  },
  'called-off': {
    book: no(calledOff),
    move: no(calledOff),
    unbook: no(calledOff),
    start: no(calledOff),
    unstart: no(notBegun),
    close: no(calledOff),
    return: no(calledOff),
    'hand-over': no(calledOff),
    hold: no(calledOff),
    release: no(calledOff),
    'call-off': no('This job is already called off.'),
    revive: to('proposed'),
  },
}

/** The state after an event, or a sentence saying why it cannot happen now. */
export function nextJobState(state: JobState, event: JobEvent): JobStep {
  return jobStateTable[state][event]
}

/**
 * The state of a job after a visit that the office had called off was done all the same: what a crew did is a fact, whatever was planned meanwhile. Null where it would
 * stand against another fact: the job is closed, or another crew is at it.
 */
export function stateAfterFact(state: JobState, event: 'close' | 'return'): JobState | null {
  if (state === 'closed' || state === 'under-way') return null
  return event === 'close' ? 'closed' : state
}
