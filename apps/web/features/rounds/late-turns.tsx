'use client'
import type { RoundTurn } from '@almanac/contract/agreements'
import { Button } from '@almanac/ui/button'
import { DataTable } from '@almanac/ui/data-table'
import { useDisplay } from '@almanac/ui/display'
import { Section } from '@almanac/ui/section'
import Link from 'next/link'
import { useState } from 'react'
import { SettleTurn } from '@/client/agreements/settle-turn'
import { ProposeTurns } from './propose-turns.tsx'
import { turnColumns, turnKey } from './turn-columns.tsx'

/** What was due and not done, until it has a job that is closed, or somebody says what became of it. */
export function LateTurns({ turns, thisMonth }: { turns: readonly RoundTurn[]; thisMonth: string }) {
  const display = useDisplay()
  const [settling, setSettling] = useState<RoundTurn | null>(null)
  const open = turns.filter((turn) => turn.standing === 'open')
  return (
    <Section title="Not done">
      <DataTable
        caption="What was due and not done"
        columns={[
          ...turnColumns(display),
          {
            key: 'settle',
            head: '',
            cell: (turn) =>
              turn.standing === 'open' ? (
                <Button kind="quiet" onClick={() => setSettling(turn)} aria-label={`Done or skip: ${turn.siteLabel}`}>
                  Done or skip
                </Button>
              ) : null,
          },
        ]}
        rows={turns}
        rowKey={turnKey}
        rowHref={(turn) => `/sites/${turn.siteId}`}
        link={Link}
        empty={<p className="text-soft">Nothing is late.</p>}
      />
      {open.length > 0 ? (
        <div className="mt-3">
          <ProposeTurns month={thisMonth} turns={open} />
        </div>
      ) : null}
      {settling ? <SettleTurn turn={settling} onClose={() => setSettling(null)} /> : null}
    </Section>
  )
}
