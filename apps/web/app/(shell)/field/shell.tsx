'use client'
import { useEffect, useState } from 'react'
import { FieldHome } from '@/client/field/field-home'
import { type Known, lastKnown } from '@/client/field/field-store'
import { Piece, piece } from '@/client/piece'
import { Providers } from '@/client/providers'

// One of them is shown: a cold start reads no more than it.
const TODAY = piece(() => import('@/features/today/today').then((module) => module.Today))
const VISIT = piece(() => import('@/features/visit/visit').then((module) => module.Visit))

/** The visit that the address asks for, where it asks for one. */
const visitIn = (path: string): string | null => /^\/visits\/([0-9a-f-]{36})$/i.exec(path)?.[1] ?? null

type Found = { known: Known | null; visitId: string | null }

/** Whichever field page the address asks for, for whoever worked on this device last. */
export function Shell({ emptyTitle, emptyText }: { emptyTitle: string; emptyText: string }) {
  const [found, setFound] = useState<Found | null>(null)
  useEffect(() => {
    const visitId = visitIn(location.pathname)
    lastKnown().then(
      (known) => setFound({ known: known ?? null, visitId }),
      () => setFound({ known: null, visitId }),
    )
  }, [])
  if (found === null) return null
  if (found.known === null)
    return (
      <main className="field mx-auto flex min-h-dvh max-w-[860px] flex-col gap-3 bg-paper px-4 py-10 text-ink">
        <h1 className="text-h1 font-semibold">{emptyTitle}</h1>
        <p>{emptyText}</p>
      </main>
    )
  const { me, messages } = found.known
  return (
    <Providers me={me} messages={messages}>
      <FieldHome me={me} messages={messages}>
        {found.visitId === null ? <Piece of={TODAY} give={{}} /> : <Piece of={VISIT} give={{ visitId: found.visitId }} />}
      </FieldHome>
    </Providers>
  )
}
