import type { ReactNode } from 'react'

export type EmptyProps = {
  /** What belongs here: "No beds watched yet". */
  title: ReactNode
  /** How it comes here. */
  children?: ReactNode
  /** The first thing to do. */
  action?: ReactNode
  /** A small drawing above the words. */
  picture?: ReactNode
}

/** An empty place that says what belongs in it and offers the first action. */
export function Empty({ title, children, action, picture }: EmptyProps) {
  return (
    <div className="flex max-w-[60ch] flex-col items-start gap-2 py-6">
      {picture}
      <p className="text-h2 font-semibold">{title}</p>
      {children ? <div className="text-soft">{children}</div> : null}
      {action ? <div className="mt-3">{action}</div> : null}
    </div>
  )
}
