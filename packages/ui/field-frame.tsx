import type { ReactNode } from 'react'

export type FieldFrameProps = {
  /** What the technician is at: "Orchard Lane 14 · rebed". */
  title: ReactNode
  /** What is kept on the tablet and what has reached the office; spoken when it changes. */
  status?: ReactNode
  /** A way back, shown before the title. */
  back?: ReactNode
  /** The work has stopped: the head is red. */
  stopped?: boolean
  /** Search and menu, at the far right. */
  tools?: ReactNode
  children: ReactNode
}

/** The tablet's sheet: one column, large type, strong contrast, title left and status right. */
export function FieldFrame({ title, status, back, tools, stopped, children }: FieldFrameProps) {
  return (
    <div className="field flex min-h-dvh flex-col bg-paper text-ink">
      <header
        className={`relative flex flex-wrap items-center justify-between gap-x-6 gap-y-1 border-b px-4 py-3 sm:px-7 ${stopped ? 'border-danger bg-danger text-paper [&_a]:text-paper [&_output]:text-paper' : 'border-ink'}`}
      >
        <div className="flex items-center gap-4">
          {back}
          <strong className="font-semibold">{title}</strong>
        </div>
        <div className="flex items-center gap-x-4">
          <output className="text-soft">{status}</output>
          {tools}
        </div>
      </header>
      <main id="main" className="mx-auto w-full max-w-[860px] grow px-4 py-6 sm:px-7">
        {children}
      </main>
    </div>
  )
}
