'use client'
import type { DaySheet } from '@almanac/contract/day-sheets'
import type { Unusual } from '@almanac/records/day-plan'
import { Button } from '@almanac/ui/button'
import { DefinitionList } from '@almanac/ui/definition-list'
import { useDisplay } from '@almanac/ui/display'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { useToast } from '@almanac/ui/toast'
import { clockIn } from '@almanac/units/calendar/zone-clock'
import { formatClocks } from '@almanac/units/format-clock'
import { useState } from 'react'
import { readFailure, versionNow } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { SheetForm, type SheetValues } from './sheet-form.tsx'
import { takenBy } from './taken-by.ts'

/** Changes a sheet's crew, vehicle, hours or notes; when someone was faster, both values are shown and the person chooses. */
export function ChangeCrew({ sheet, sheets, onClose }: { sheet: DaySheet; sheets: readonly DaySheet[]; onClose: () => void }) {
  const { api, me } = useSession()
  const showToast = useToast()
  const { timeZone } = me.company
  // What the person saw when they opened the form: a change by someone else must not slip in under their hand.
  const [seen] = useState(sheet)
  const [sent, setSent] = useState<SheetValues | null>(null)
  const change = useCommand(api.daySheets.change.mutationOptions(), {
    onDone: () => {
      showToast({ text: `The sheet ${sent?.name ?? ''} is changed.` })
      onClose()
    },
  })
  const failure = change.error ? readFailure(change.error) : null
  const unusual = (failure?.detail.confirm as Unusual[] | undefined) ?? []
  const send = (values: SheetValues, version: number) => {
    // What was asked about is confirmed by sending the same again; other values are asked about afresh.
    const confirmed = JSON.stringify(values) === JSON.stringify(sent) ? unusual : []
    setSent(values)
    change.send({ ...values, crewDayId: sheet.id, version, notes: values.notes || null, confirmed })
  }
  const conflict = failure?.code === 'version-conflict' && sent
  return (
    <SheetForm
      title={`Crew of ${seen.name}`}
      sendLabel={unusual.length > 0 ? 'Save anyway' : 'Save'}
      day={seen.day}
      withNotes
      taken={takenBy(sheets, seen.id)}
      start={{
        name: seen.name,
        colleagueIds: seen.members.map((member) => member.colleagueId),
        vehicleId: seen.vehicle?.id ?? null,
        from: clockIn(timeZone, seen.startsAt),
        until: clockIn(timeZone, seen.endsAt),
        notes: seen.notes ?? '',
      }}
      busy={change.isPending}
      onClose={onClose}
      onSend={(values) => send(values, seen.version)}
      problem={
        conflict ? (
          <Versions sheet={sheet} sent={sent} said={failure.message} onMine={() => send(sent, versionNow(failure))} onTheirs={onClose} />
        ) : unusual.length > 0 && failure ? (
          <Notice kind="mind">{failure.message}</Notice>
        ) : failure ? (
          <Problem happened={failure.message} />
        ) : null
      }
    />
  )
}

type VersionsProps = { sheet: DaySheet; sent: SheetValues; said: string; onMine: () => void; onTheirs: () => void }

/** `sheet` has been fetched again since, so it is what stands now. */
function Versions({ sheet, sent, said, onMine, onTheirs }: VersionsProps) {
  const display = useDisplay()
  const hours = formatClocks(sheet.startsAt, sheet.endsAt, display)
  const names = sheet.members.map((member) => member.name).join(', ')
  return (
    <div role="alert" className="border-l-4 border-bead bg-wash px-4 py-3">
      <p className="mb-2">{said}</p>
      <DefinitionList
        facts={[
          { name: 'Theirs', value: `${sheet.name}: ${names}; ${sheet.vehicle?.name ?? 'no vehicle'}; ${hours}` },
          { name: 'Yours', value: `${sent.name}; ${sent.colleagueIds.length} people; ${sent.from}–${sent.until}` },
        ]}
      />
      <div className="mt-3 flex flex-wrap gap-3">
        <Button onClick={onTheirs}>Use theirs</Button>
        <Button onClick={onMine}>Use mine</Button>
      </div>
    </div>
  )
}
