'use client'
import type { CallSite, RecordCall } from '@almanac/contract/calls'
import { type CallComplaint, type CalledForVisit, callComplaints, callComplaintWords } from '@almanac/records/call'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { DayInput } from '@almanac/ui/day-input'
import { useDisplay } from '@almanac/ui/display'
import { Select } from '@almanac/ui/select'
import { TextArea } from '@almanac/ui/text-area'
import { TextInput } from '@almanac/ui/text-input'
import { useToast } from '@almanac/ui/toast'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { formatDay } from '@almanac/units/format-day'
import { useQuery } from '@tanstack/react-query'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { FormDialog } from '../form-dialog.tsx'
import { useSession } from '../providers.tsx'
import { useCommand } from '../use-command.ts'
import { useFields } from '../use-fields.ts'
import { useToday } from '../use-today.ts'
import { CallerLines } from './caller-lines.tsx'
import { type Caller, WhoField } from './who-field.tsx'

/** What follows, as one choice: a kind of visit is chosen with it. */
type Follow = 'nothing' | CalledForVisit | 'materials' | 'quote-later' | 'call-back'
type Softness = 'soft' | 'hard'

function followChoices(caller: Caller | null, site: CallSite | undefined, bedId: string | null, display: Parameters<typeof formatDay>[1]) {
  const known = caller?.siteId != null
  const visits: { value: Follow; label: string }[] = [
    { value: 'repair', label: 'Repair' },
    { value: 'emergency', label: 'Emergency, today' },
    ...(bedId ? [{ value: 'rebed' as const, label: 'Rebed' }] : []),
    { value: 'look-and-quote', label: 'Look and quote' },
    ...(site?.lastRebed
      ? [{ value: 'complaint' as const, label: `Complaint after the rebed of ${formatDay(site.lastRebed.day, display)}` }]
      : []),
    { value: 'materials', label: 'Materials only' },
  ]
  return [
    { value: 'nothing', label: 'Nothing more' },
    ...(known ? visits : []),
    { value: 'call-back', label: 'Call back' },
    { value: 'quote-later', label: 'Quote later' },
  ]
}

const followsOf = (follow: Follow, day: string): RecordCall['follows'] => {
  if (follow === 'nothing' || follow === 'materials') return { what: follow }
  if (follow === 'call-back') return { what: 'call-back', day }
  if (follow === 'quote-later') return { what: 'quote', day }
  return { what: 'visit', visit: follow }
}

/** Of a softener whose water is said to be hard: a visit is offered with it, a repair where nothing else is said. */
export type HardAt = { softenerId: string; follows?: 'rebed' }
type Props = { startSiteId: string | null; hardAt?: HardAt; onClose: () => void }

/** One call on one sheet along the margin: who, what they see, what was advised, what follows. It ends in one press. */
export function CallForm({ startSiteId, hardAt, onClose }: Props) {
  const { api } = useSession()
  const display = useDisplay()
  const today = useToday()
  const router = useRouter()
  const showToast = useToast()
  const [caller, setCaller] = useState<Caller | null>(startSiteId ? { siteId: startSiteId, what: '' } : null)
  const siteId = caller?.siteId ?? null
  const query = useQuery(api.calls.ofSite.queryOptions({ input: { siteId: siteId ?? '' }, enabled: siteId !== null }))
  const site = siteId ? query.data : undefined
  const [softenerId, setSoftenerId] = useState<string | null>(hardAt?.softenerId ?? null)
  const softener = site?.softeners.find((one) => one.id === softenerId) ?? (site?.softeners.length === 1 ? site.softeners[0] : undefined)
  const [sees, setSees] = useState<CallComplaint | null>(null)
  const [softness, setSoftness] = useState<Softness | null>(hardAt ? 'hard' : null)
  const [follow, setFollow] = useState<Follow>(hardAt ? (hardAt.follows ?? 'repair') : 'nothing')
  const { values, field, set } = useFields(() => ({
    ...{ name: '', phone: '', words: '', advised: '', hardSince: '', day: addDays(today, 1) },
  }))
  const record = useCommand(api.calls.record.mutationOptions(), {
    onDone: ({ jobId }) => {
      onClose()
      showToast({ text: jobId ? 'Call kept, job added.' : 'Call kept.' })
      // What was asked for wants a time next, while they are on the phone.
      if (jobId) router.push(`/jobs/${jobId}`)
    },
  })
  const take = (next: Caller | null) => {
    setCaller(next)
    setSoftenerId(null)
    setSoftness(null)
    if (follow !== 'call-back' && follow !== 'quote-later') setFollow('nothing')
    if (next?.siteId === null) set(/^[\d\s+().-]{5,}$/.test(next.typed) ? { phone: next.typed, name: '' } : { name: next.typed, phone: '' })
  }
  const submit = () =>
    record.send({
      ...{ siteId, softenerId: softener?.id ?? null, sees, words: values.words, advised: values.advised },
      ...(siteId === null ? { callerName: values.name, callerPhone: values.phone } : { callerName: '', callerPhone: '' }),
      stillSoft: softness === 'soft',
      hardSinceDay: null,
      ...(softness === 'hard' ? { hardSince: values.hardSince } : {}),
      follows: followsOf(follow, values.day),
    })
  return (
    <FormDialog
      title="Record a call"
      onClose={onClose}
      onSubmit={submit}
      busy={record.isPending}
      error={record.error}
      saveLabel="Keep call"
    >
      {caller === null ? <WhoField onTake={take} /> : null}
      {caller ? <CallerLines caller={caller} site={site} error={query.error} onOther={() => take(null)} /> : null}
      {caller?.siteId === null ? (
        <>
          <TextInput label="Name" {...field('name')} maxLength={120} autoComplete="off" />
          <TextInput label="Phone" type="tel" {...field('phone')} maxLength={60} autoComplete="off" />
        </>
      ) : null}
      {site && site.softeners.length > 1 ? (
        <Select
          label="Which softener"
          value={softenerId ?? ''}
          onChange={(event) => setSoftenerId(event.target.value || null)}
          choices={[{ value: '', label: 'Not said' }, ...site.softeners.map((one) => ({ value: one.id, label: one.label }))]}
        />
      ) : null}
      {softener ? (
        <ChoiceGroup
          label="Is the water still soft?"
          inline
          value={softness ?? ''}
          onChange={(value) => setSoftness(value as Softness)}
          choices={[
            { value: 'soft', label: 'Still fine today' },
            { value: 'hard', label: 'Hard' },
          ]}
        />
      ) : null}
      {softness === 'hard' ? (
        <TextInput
          label="Hard since about"
          hint="As they say it: spring, March 2026, 2025"
          required
          maxLength={60}
          {...field('hardSince')}
        />
      ) : null}
      <ChoiceGroup
        label="What they see"
        inline
        value={sees ?? ''}
        onChange={(value) => setSees(value as CallComplaint)}
        choices={callComplaints.map((one) => ({ value: one, label: callComplaintWords[one] }))}
      />
      <TextArea label="In their words" rows={2} maxLength={2000} {...field('words')} />
      <TextArea label="What you advised" rows={2} maxLength={2000} {...field('advised')} />
      <ChoiceGroup
        label="What follows"
        inline
        value={follow}
        onChange={(value) => setFollow(value as Follow)}
        choices={followChoices(caller, site, softener?.bedId ?? null, display)}
      />
      {follow === 'call-back' || follow === 'quote-later' ? <DayInput label="On" min={today} {...field('day')} required /> : null}
    </FormDialog>
  )
}
