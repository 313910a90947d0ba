import { useWords } from '@almanac/words/use-words'
export type SkeletonProps = {
  /** How many lines stand in for what is coming. */
  lines?: number
  /** What is coming, said to those who don't see the lines. */
  label?: string
}

/** Quiet lines in the place of what is being fetched. */
export function Skeleton({ lines = 5, label }: SkeletonProps) {
  const words = useWords('common')
  return (
    <output className="flex animate-pulse motion-reduce:animate-none flex-col py-2">
      <span className="sr-only">{label ?? words('loading')}</span>
      {Array.from({ length: lines }, (_, i) => (
        <span key={i} aria-hidden="true" className="block border-b border-line py-4">
          <span className="block h-3 bg-line" style={{ width: `${[62, 48, 70, 55, 40][i % 5]}%` }} />
        </span>
      ))}
    </output>
  )
}
