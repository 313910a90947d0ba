/** Small shapes that carry a meaning beside a word. */
export type ShapeName = 'hollow' | 'dashed' | 'dot' | 'half' | 'bars' | 'tick' | 'cross' | 'triangle' | 'square' | 'diamond'

const paths: Record<ShapeName, { d: string; filled?: boolean; dash?: string }> = {
  hollow: { d: 'M6 1.2 a4.8 4.8 0 1 0 0.01 0z' },
  dashed: { d: 'M6 1.2 a4.8 4.8 0 1 0 0.01 0z', dash: '2.2 1.6' },
  dot: { d: 'M6 1.2 a4.8 4.8 0 1 0 0.01 0z', filled: true },
  half: { d: 'M6 1.2 a4.8 4.8 0 1 0 0.01 0z' },
  bars: { d: 'M2.5 1.2 h2.2 v9.6 h-2.2z M7.3 1.2 h2.2 v9.6 h-2.2z', filled: true },
  tick: { d: 'M1.2 6.4 L4.6 9.8 L10.8 2.2' },
  cross: { d: 'M2 2 L10 10 M10 2 L2 10' },
  triangle: { d: 'M6 1 L11.2 10.8 H0.8z', filled: true },
  square: { d: 'M1.6 1.6 h8.8 v8.8 h-8.8z', filled: true },
  diamond: { d: 'M6 0.8 L11.2 6 L6 11.2 L0.8 6z', filled: true },
}

/** Draws a shape in the colour of the text around it. It is decoration: the word beside it says the same. */
export function Shape({ name, size = 12 }: { name: ShapeName; size?: number }) {
  const { d, filled, dash } = paths[name]
  return (
    <svg aria-hidden="true" width={size} height={size} viewBox="0 0 12 12" className="inline-block shrink-0">
      <path
        d={d}
        fill={filled ? 'currentColor' : 'none'}
        stroke="currentColor"
        strokeWidth={filled ? 0 : name === 'tick' || name === 'cross' ? 2 : 1.5}
        strokeDasharray={dash}
      />
      {name === 'half' ? <path d="M6 1.2 a4.8 4.8 0 0 1 0 9.6z" fill="currentColor" /> : null}
    </svg>
  )
}
