import type { ReactNode } from 'react'

export type SectionProps = { title: ReactNode; actions?: ReactNode; children: ReactNode; id?: string }

/** A part of a page under its own h2, ruled off from what stands above. */
export function Section({ title, actions, children, id }: SectionProps) {
  return (
    <section id={id} className="mt-8 border-t border-ink pt-3 first:mt-0">
      <div className="mb-3 flex flex-wrap items-baseline justify-between gap-x-6 gap-y-2">
        <h2 className="text-h2 font-semibold">{title}</h2>
        {actions}
      </div>
      {children}
    </section>
  )
}
