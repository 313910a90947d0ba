'use client'
import { useWords } from '@almanac/words/use-words'
import { type ReactNode, useState } from 'react'
import { DefinitionList, type Fact } from './definition-list.tsx'
import { Dialog } from './dialog.tsx'

/** Everything one may ask about a number. */
export type Explanation = {
  /** What the number is: "Chance of failure in 12 months". */
  title: ReactNode
  /** The answer, or the idea behind it, in a plain sentence: methods and their names come below. Undefined only while it is being read. */
  summary: ReactNode
  /** What went into it, each with where it came from. */
  inputs?: readonly Fact[]
  assumptions?: readonly ReactNode[]
  /** How it’s calculated, in words. */
  formula?: ReactNode
  /** What is not known and would sharpen it. */
  missing?: readonly ReactNode[]
  /** Where the rule or the figures come from. */
  source?: ReactNode
}

/** A number or phrase one can ask "why": dotted underline, one press opens the reasons along the margin. */
export function Why({ children, explanation }: { children: ReactNode; explanation: Explanation }) {
  const [open, setOpen] = useState(false)
  const words = useWords('common')
  return (
    <>
      <button
        type="button"
        aria-haspopup="dialog"
        onClick={() => setOpen(true)}
        className="min-h-6 text-left underline decoration-soft decoration-dotted decoration-2 underline-offset-4 hover:decoration-ink hover:decoration-solid in-[.field]:min-h-control in-[.field]:min-w-control print:no-underline"
      >
        {children}
        <span className="sr-only"> ({words('why')})</span>
      </button>
      <Dialog open={open} onClose={() => setOpen(false)} title={explanation.title} place="margin">
        <WhyNote explanation={explanation} />
      </Dialog>
    </>
  )
}

/** The reasons by themselves, for pages that show them in full. */
function WhyNote({ explanation: e }: { explanation: Explanation }) {
  const words = useWords('common')
  return (
    <div className="flex flex-col gap-5">
      {e.summary ? <p>{e.summary}</p> : null}
      {e.inputs?.length ? (
        <Part title={words('wentInto')}>
          <DefinitionList facts={e.inputs} />
        </Part>
      ) : null}
      {e.formula ? <Part title={words('howCalculated')}>{e.formula}</Part> : null}
      {e.assumptions?.length ? (
        <Part title={words('assumed')}>
          <Points of={e.assumptions} />
        </Part>
      ) : null}
      {e.missing?.length ? (
        <Part title={words('notKnown')}>
          <Points of={e.missing} />
        </Part>
      ) : null}
      {e.source ? (
        <Part title={words('source')}>
          <span className="text-soft">{e.source}</span>
        </Part>
      ) : null}
    </div>
  )
}

function Part({ title, children }: { title: string; children: ReactNode }) {
  return (
    <section>
      <h3 className="mb-1 font-semibold">{title}</h3>
      {children}
    </section>
  )
}

function Points({ of }: { of: readonly ReactNode[] }) {
  return (
    <ul className="list-disc pl-4 marker:text-soft">
      {of.map((point, i) => (
        <li key={i} className="pl-1">
          {point}
        </li>
      ))}
    </ul>
  )
}
