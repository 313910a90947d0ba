import type { CautionKind } from '@almanac/records/caution-kind'
import type { ReactNode } from 'react'

// Each drawn in a 24-unit square with plain strokes, so that a kind is known by its shape as well as by its word.
const marks: Record<CautionKind, string> = {
  pressure: 'M12 3 a9 9 0 1 0 0.01 0z M12 12 L17 7.5 M5.5 12 h2 M12 5.5 v2 M18.5 12 h-2 M12 12 h0.01',
  electricity: 'M14 2 L5 13.5 H11.5 L9.5 22 L19 10 H12.5z',
  lifting: 'M5 22 L7 13 H17 L19 22z M12 13 V3 M8 6.5 L12 2.5 L16 6.5',
  chemical: 'M9 2.5 h6 M10 2.5 v7 L4 20 a1 1 0 0 0 1 1.5 h14 a1 1 0 0 0 1 -1.5 L14 9.5 v-7 M7 15.5 h10',
  water: 'M12 2.5 C8 8.5 5.5 11.5 5.5 15 a6.5 6.5 0 0 0 13 0 C18.5 11.5 16 8.5 12 2.5z',
  slip: 'M16 2.5 a2 2 0 1 0 0.01 0z M14 8 L8 13.5 L16.5 16.5 M13 9 L18.5 11.5 M8 13.5 L3 12 M2 21.5 q2.5 -3 5 0 t5 0 t5 0 t5 0',
  refer: 'M3 4 h11 v16 h-11z M9 12 h12 M17 8 l4 4 l-4 4',
}

/** `word` is what the caution begins with. */
export type CautionBoxProps = { kind: CautionKind; word: string; children: ReactNode }

/** A caution, framed in red, standing before the step it belongs to; for pages from the server too. */
export function CautionBox({ kind, word, children }: CautionBoxProps) {
  return (
    <div role="note" className="my-4 flex items-start gap-3.5 border-2 border-danger px-4 py-3.5">
      <svg
        aria-hidden="true"
        width="26"
        height="26"
        viewBox="0 0 24 24"
        className="mt-px shrink-0 fill-none stroke-danger stroke-2"
        strokeLinejoin="round"
        strokeLinecap="round"
      >
        <path d={marks[kind]} />
      </svg>
      <p>
        <strong className="font-bold text-danger">{word}.</strong> {children}
      </p>
    </div>
  )
}
