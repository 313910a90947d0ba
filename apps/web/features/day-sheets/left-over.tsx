/** Jobs without a place that this sheet cannot take, counted by reason. */
export function LeftOver({ left }: { left: readonly { reason: string; jobs: number }[] }) {
  const count = left.reduce((sum, one) => sum + one.jobs, 0)
  if (count === 0) return null
  return (
    <details className="print:hidden border-t border-line px-3 py-2 text-small text-soft sm:px-5">
      <summary className="min-h-6">{count === 1 ? 'One more job doesn’t fit' : `${count} more jobs don’t fit`}: see why</summary>
      <ul className="py-2">
        {left.map((one) => (
          <li key={one.reason}>
            {one.jobs} × {one.reason}
          </li>
        ))}
      </ul>
    </details>
  )
}
