import type { ReactNode } from 'react'
import { Shape, type ShapeName } from './shape.tsx'

/** What a colour means; each is a text colour with enough contrast. */
export type Tone = 'ink' | 'soft' | 'water' | 'bead' | 'done' | 'danger'

const tones: Record<Tone, string> = {
  ink: 'text-ink',
  soft: 'text-soft',
  water: 'text-water',
  bead: 'text-bead-ink',
  done: 'text-done',
  danger: 'text-danger',
}

export type StatusWordProps = { shape: ShapeName; tone?: Tone; children: ReactNode }

/** A state as a word with a shape before it; colour only underlines what both already say. */
export function StatusWord({ shape, tone = 'ink', children }: StatusWordProps) {
  return (
    <span className={`inline-flex items-baseline gap-1.5 [&>svg]:self-center ${tones[tone]}`}>
      <Shape name={shape} />
      {children}
    </span>
  )
}
