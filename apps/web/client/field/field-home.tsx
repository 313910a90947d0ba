'use client'
import type { Me } from '@almanac/contract/session'
import { backoffMs, enqueue, type Outbox, resume, type Waiting } from '@almanac/service-rules/field/outbox'
import type { Messages } from '@almanac/words/messages-of'
import { useQueryClient } from '@tanstack/react-query'
import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useRef, useState } from 'react'
import { v7 } from 'uuid'
import { fetchChanged } from '../fetch-changed.ts'
import { useSession } from '../providers.tsx'
import { changeOutbox, type Owner, ownerOf, readOutbox, rememberPerson } from './field-store.ts'
import { keepWork } from './keep-work.ts'
import { sendOne, sendOutbox } from './send-outbox.ts'
import { startServiceWorker } from './service-worker.ts'

/** Version of the bodies that this app writes; docs/field-protocol.md. */
const FORM = 1
const KEEP_WORK_EVERY_MS = 10 * 60_000

/** A command taken by the server while this page is open: shown until the next answer of the server shows it. */
export type Lately = { command: Waiting; at: number }
export type Deed = {
  kind: 'start' | 'undo-start' | 'close-out' | 'entries'
  body: Record<string, unknown>
  visitId: string
  siteLabel: string
}

type Field = {
  owner: Owner
  /** Null until it was read. */
  outbox: Outbox | null
  sending: boolean
  lately: readonly Lately[]
  /** False where this device refuses to keep anything. */
  keeps: boolean
  /**
   * Writes a command down on this device and sends it when it can be; with `doneJobId` the job's draft goes at the same moment. A device that keeps nothing sends it at
   * once. False where neither was possible: it is nowhere then, and the page must keep what was typed.
   */
  write: (deed: Deed, doneJobId?: string) => Promise<boolean>
  sendNow: () => void
  /** Takes what was told off the list. */
  heard: (commandId: string) => void
}

const Home = createContext<Field | null>(null)

/** The tablet's own store and queue. Only under the field's layout or shell. */
export function useField(): Field {
  const value = useContext(Home)
  if (!value) throw new Error('useField is used outside the field')
  return value
}

/** What wakes a queue that waits: a connection, or somebody who looks. */
const WAKING = ['online', 'focus', 'pageshow'] as const

/** Keeps the work of today and tomorrow, drafts and what waits to be sent on this device, and sends it when the server can be reached. */
export function FieldHome({ me, messages, children }: { me: Me; messages: Messages; children: ReactNode }) {
  const { api } = useSession()
  const queries = useQueryClient()
  const owner = ownerOf(me)
  const [outbox, setOutbox] = useState<Outbox | null>(null)
  const [sending, setSending] = useState(false)
  const [keeps, setKeeps] = useState(true)
  const [lately, setLately] = useState<readonly Lately[]>([])
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined)

  const send = useCallback(async () => {
    clearTimeout(timer.current)
    setSending(true)
    try {
      let took = false
      await sendOutbox(owner, api.field.send.call, (now, taken) => {
        setOutbox(now)
        took ||= taken !== null
        if (taken) setLately((before) => [...before, { command: taken, at: Date.now() }])
      })
      const now = await readOutbox(owner)
      setOutbox(now)
      if (now.waiting.length > 0 && !now.halt) timer.current = setTimeout(() => void send(), backoffMs(now.tries))
      if (took) await fetchChanged(queries, ['visit', 'job', 'site', 'bed', 'stock-item'])
    } catch {
      setKeeps(false)
    } finally {
      setSending(false)
    }
  }, [owner, api, queries])

  useEffect(() => {
    startServiceWorker()
    const wake = () => {
      // Somebody may have signed in meanwhile, here or in another window.
      void changeOutbox(owner, resume).then(
        () => send(),
        () => setKeeps(false),
      )
      void keepWork(api, owner)
    }
    void rememberPerson({ me, messages }).then(wake, () => setKeeps(false))
    for (const name of WAKING) window.addEventListener(name, wake)
    const work = setInterval(() => void keepWork(api, owner), KEEP_WORK_EVERY_MS)
    return () => {
      for (const name of WAKING) window.removeEventListener(name, wake)
      clearInterval(work)
      clearTimeout(timer.current)
    }
  }, [api, owner, me, messages, send])

  const value = useMemo<Field>(() => {
    const change = (how: (now: Outbox) => Outbox, doneJobId?: string) => changeOutbox(owner, how, doneJobId).then(setOutbox)
    return {
      ...{ owner, outbox, sending, lately, keeps },
      write: async ({ kind, body, visitId, siteLabel }, doneJobId) => {
        const made = { commandId: v7(), form: FORM, kind, madeAt: new Date().toISOString(), body: storable(body), visitId, siteLabel }
        try {
          await change((now) => enqueue(now, made), doneJobId)
        } catch {
          setKeeps(false)
          const command = { ...made, sequence: 1 }
          const end = await sendOne(api.field.send.call, v7(), { ...command, oldest: 1 })
          if (end.result === 'taken') setLately((before) => [...before, { command, at: Date.now() }])
          return end.result !== 'failed'
        }
        void send()
        return true
      },
      sendNow: () => void changeOutbox(owner, resume).then(() => send()),
      heard: (commandId) => void change((now) => ({ ...now, told: now.told.filter((one) => one.commandId !== commandId) })),
    }
  }, [owner, outbox, sending, lately, keeps, send, api])
  return <Home value={value}>{children}</Home>
}

/** A body without what no database keeps (a zero character, half a character): the door would refuse the whole for it. */
function storable(body: Record<string, unknown>): Record<string, unknown> {
  return JSON.parse(JSON.stringify(body), (_, value: unknown) =>
    typeof value === 'string' ? value.replaceAll('\u0000', '').toWellFormed() : value,
  ) as Record<string, unknown>
}
