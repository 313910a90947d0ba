'use client'
import type { CallBackRow } from '@almanac/contract/calls'
import { callBackCauseWords } from '@almanac/records/call'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { StatusWord } from '@almanac/ui/status-word'
import { TextLink } from '@almanac/ui/text-link'
import { useToast } from '@almanac/ui/toast'
import Link from 'next/link'
import { Fragment } from 'react'
import { readFailure } from '../failure.ts'
import { PhoneLink } from '../phone-link.tsx'
import { useSession } from '../providers.tsx'
import { useCommand } from '../use-command.ts'
import { useToday } from '../use-today.ts'
import { aboutWords, dueWord } from './call-words.ts'

const nameOf = (row: CallBackRow) =>
  row.whom?.called?.name ?? row.whom?.customerName ?? row.callerName ?? row.siteLabel ?? row.callerPhone ?? ''

function Row({ row }: { row: CallBackRow }) {
  const { api } = useSession()
  const display = useDisplay()
  const today = useToday()
  const showToast = useToast()
  const settle = useCommand(api.calls.settle.mutationOptions(), {
    onDone: ({ state }) => showToast({ text: state === 'done' ? `Called ${nameOf(row)}.` : `${nameOf(row)} is due again tomorrow.` }),
  })
  const phone = row.callerPhone ?? row.whom?.called?.phone
  const late = row.dueDay < today
  const send = (outcome: 'talked' | 'no-answer') => settle.send({ callBackId: row.id, version: row.version, outcome, note: '' })
  return (
    <li className="flex flex-wrap items-start gap-x-6 gap-y-2 border-b border-line py-3">
      <span className="w-44 shrink-0">
        <StatusWord shape={late ? 'triangle' : 'dot'} tone={late ? 'danger' : row.dueDay === today ? 'ink' : 'soft'}>
          {dueWord(row.dueDay, today, display)}
        </StatusWord>
        <span className="block text-small text-soft">
          {callBackCauseWords[row.cause]}
          {row.tried ? ', no answer before' : ''}
        </span>
      </span>
      <span className="min-w-0 grow basis-64">
        <span className="font-semibold">{nameOf(row)}</span>{' '}
        {phone ? <PhoneLink phone={phone} /> : <span className="text-soft">no phone number</span>}
        {(row.callerPhone === null ? (row.whom?.called?.otherPhones ?? []) : []).map((other) => (
          <Fragment key={other}>
            {' '}
            or <PhoneLink phone={other} />
          </Fragment>
        ))}
        {row.whom?.called?.mayCall === false ? <span className="text-small text-soft"> asked not to be called</span> : null}
        <span className="block">{aboutWords(row, display)}</span>
        <span className="block text-small text-soft">
          {row.siteId ? (
            <TextLink href={`/sites/${row.siteId}`} link={Link}>
              {[row.siteLabel, row.town].filter(Boolean).join(', ')}
            </TextLink>
          ) : (
            'not on record'
          )}
          {row.job ? (
            <>
              {' · '}
              <TextLink href={`/jobs/${row.job.id}`} link={Link}>
                Open the job
              </TextLink>
            </>
          ) : null}
        </span>
        {settle.error ? <Problem happened={readFailure(settle.error).message} /> : null}
      </span>
      <span className="flex gap-2 max-sm:mt-1">
        <Button onClick={() => send('no-answer')} busy={settle.isPending} aria-label={`No answer from ${nameOf(row)}`}>
          No answer
        </Button>
        <Button kind="ink" onClick={() => send('talked')} busy={settle.isPending} aria-label={`Talked to ${nameOf(row)}`}>
          Talked
        </Button>
      </span>
    </li>
  )
}

/** Whom to call, due first: name, number, what to say, and what came of it in one press. */
export function CallBackList({ rows }: { rows: readonly CallBackRow[] }) {
  return (
    <ul className="border-t border-line">
      {rows.map((row) => (
        <Row key={row.id} row={row} />
      ))}
    </ul>
  )
}
