import type { ReactNode } from 'react'
import { Shape, type ShapeName } from './shape.tsx'

export type NoticeKind = 'said' | 'done' | 'mind'

const looks: Record<NoticeKind, { border: string; text: string; shape: ShapeName }> = {
  said: { border: 'border-water', text: 'text-water', shape: 'dot' },
  done: { border: 'border-done', text: 'text-done', shape: 'tick' },
  mind: { border: 'border-bead', text: 'text-bead-ink', shape: 'triangle' },
}

export type NoticeProps = {
  /** `said` a piece of news, `done` something that worked, `mind` something to look at. */
  kind?: NoticeKind
  children: ReactNode
  action?: ReactNode
}

/** A status message, spoken politely when it appears or changes. */
export function Notice({ kind = 'said', children, action }: NoticeProps) {
  const look = looks[kind]
  return (
    <output className={`my-3 flex max-w-[75ch] flex-wrap items-center gap-x-4 gap-y-2 border-l-4 bg-wash px-4 py-2.5 ${look.border}`}>
      <span className="flex grow basis-60 items-baseline gap-2.5">
        <span className={look.text}>
          <Shape name={look.shape} />
        </span>
        <span>{children}</span>
      </span>
      {action}
    </output>
  )
}
