import type { JobState } from '@almanac/records/job-state'
import type { VisitState } from '@almanac/records/visit-state'
import { useWords } from '@almanac/words/use-words'
import type { ShapeName } from './shape.tsx'
import { StatusWord, type Tone } from './status-word.tsx'

const looks: Readonly<Record<JobState | VisitState, { shape: ShapeName; tone: Tone }>> = {
  proposed: { shape: 'dashed', tone: 'soft' },
  offered: { shape: 'hollow', tone: 'bead' },
  booked: { shape: 'dot', tone: 'bead' },
  'under-way': { shape: 'half', tone: 'water' },
  held: { shape: 'bars', tone: 'ink' },
  closed: { shape: 'tick', tone: 'done' },
  'called-off': { shape: 'cross', tone: 'soft' },
}

/** The state of a job or a visit, drawn and named the same on every screen. */
export function JobStateWord({ state }: { state: JobState | VisitState }) {
  const words = useWords('jobState')
  const look = looks[state]
  return (
    <StatusWord shape={look.shape} tone={look.tone}>
      {words(state)}
    </StatusWord>
  )
}
