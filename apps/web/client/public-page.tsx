'use client'
import { Problem } from '@almanac/ui/problem'
import { useWords } from '@almanac/words/use-words'
import type { ReactNode } from 'react'

/** A page for someone who is not signed in: its title, what it is for, and a form. */
export function PublicPage({ title, lead, children }: { title: ReactNode; lead?: ReactNode; children?: ReactNode }) {
  return (
    <main className="mx-auto flex min-h-dvh max-w-xl flex-col justify-center px-5 py-10">
      <p className="text-soft">Rebed Almanac</p>
      <h1 className="mt-1 text-h1 font-semibold">{title}</h1>
      {lead ? <p className="mt-1 mb-6 text-soft">{lead}</p> : null}
      {children}
    </main>
  )
}

/** A link that does not work: why, and where else to go. */
export function LinkRefused({ refused }: { refused: string }) {
  const words = useWords('join')
  return (
    <PublicPage title={words('refused')}>
      <Problem happened={refused} />
      <ToSignIn />
    </PublicPage>
  )
}

/** The way back for somebody who has a password. */
export function ToSignIn() {
  const words = useWords('join')
  return (
    <p>
      <a href="/sign-in" className="underline underline-offset-4">
        {words('toSignIn')}
      </a>
    </p>
  )
}
