import { useWords } from '@almanac/words/use-words'
export type StepsProps = {
  /** Number of the present step, from 1. */
  current: number
  total: number
  /** Which are done, where that is known better than by the place reached. */
  done?: readonly boolean[]
  /** Names of the steps, shown under the bar when there are few (a wizard); a long procedure shows only the bar. */
  names?: readonly string[]
  /** What the steps belong to: "Rebed procedure". */
  label?: string
}

/** How far a wizard or a procedure has come: done, now and to come, told in words and drawn as segments. */
export function Steps({ current, total, done, names, label }: StepsProps) {
  const words = useWords('common')
  const states = Array.from({ length: total }, (_, i) => (i + 1 === current ? 'now' : (done?.[i] ?? i + 1 < current) ? 'done' : 'to come'))
  const bar = { done: 'bg-done h-2', now: 'bg-ink h-3', 'to come': 'bg-line h-2' } as const
  if (!names)
    return (
      <div className="mb-5">
        <p className="mb-2 text-small text-soft">{words('stepOf', { current: String(current), total: String(total) })}</p>
        <div aria-hidden="true" className="flex items-end gap-1">
          {states.map((s, i) => (
            <span key={i} className={`min-w-0 flex-1 ${bar[s as keyof typeof bar]}`} />
          ))}
        </div>
      </div>
    )
  return (
    <nav aria-label={label} className="mb-6">
      <ol className="flex gap-1.5">
        {names.map((name, i) => {
          const s = (states[i] ?? 'to come') as keyof typeof bar
          return (
            <li key={name} aria-current={s === 'now' ? 'step' : undefined} className="flex min-w-0 flex-1 flex-col justify-end">
              <span
                className={`truncate pb-1.5 text-small max-sm:sr-only ${s === 'now' ? 'font-semibold text-ink max-sm:not-sr-only' : 'text-soft'}`}
              >
                {s === 'done' ? <span className="sr-only">{words('done')} </span> : null}
                {name}
              </span>
              <span aria-hidden="true" className="flex h-3 items-end">
                <span className={`w-full ${bar[s]}`} />
              </span>
            </li>
          )
        })}
      </ol>
    </nav>
  )
}
