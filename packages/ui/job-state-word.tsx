import type { ShapeName } from './shape.tsx'
import { StatusWord, type Tone } from './status-word.tsx'

const looks: Record<string, { shape: ShapeName; tone: Tone }> = {
  proposed: { shape: 'dashed', tone: 'soft' },
  offered: { shape: 'hollow', tone: 'bead' },
  booked: { shape: 'dot', tone: 'bead' },
  'under way': { shape: 'half', tone: 'water' },
  held: { shape: 'bars', tone: 'ink' },
  closed: { shape: 'tick', tone: 'done' },
  'called off': { shape: 'cross', tone: 'soft' },
}

/** The state of a job, drawn the same on every screen. Accepts `under_way` or `under way`; an unknown state is shown as it stands. */
export function JobStateWord({ state }: { state: string }) {
  const word = state.replaceAll(/[_-]/g, ' ')
  const look = looks[word] ?? { shape: 'hollow', tone: 'ink' }
  return (
    <StatusWord shape={look.shape} tone={look.tone}>
      {word}
    </StatusWord>
  )
}
