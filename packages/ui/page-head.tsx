import type { ReactNode } from 'react'

export type PageHeadProps = {
  title: ReactNode
  /** One or two sentences that say what stands here and what it means. */
  lead?: ReactNode
  /** Where this page hangs: a link or two above the title. */
  above?: ReactNode
  actions?: ReactNode
}

/** The head of a page: its one h1, a leading sentence, and what can be done. */
export function PageHead({ title, lead, above, actions }: PageHeadProps) {
  return (
    <div className="mb-6 flex flex-wrap items-end justify-between gap-x-8 gap-y-4">
      <div className="min-w-0">
        {above ? <div className="mb-1 text-small text-soft">{above}</div> : null}
        <h1 className="text-h1 font-semibold text-balance">{title}</h1>
        {lead ? <p className="mt-1 max-w-[70ch] text-pretty text-soft">{lead}</p> : null}
      </div>
      {actions ? <div className="flex flex-wrap gap-3">{actions}</div> : null}
    </div>
  )
}
