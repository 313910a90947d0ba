'use client'
import { choicesOf, oneOf } from '@almanac/records/choices'
import { type MeasuringPoint, measuringPoints, measuringPointWords } from '@almanac/records/measuring-point'
import { Button } from '@almanac/ui/button'
import { DayInput } from '@almanac/ui/day-input'
import { NumberInput } from '@almanac/ui/number-input'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Select } from '@almanac/ui/select'
import { TextLink } from '@almanac/ui/text-link'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useRouter } from 'next/navigation'
import { type FormEvent, useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useDayField } from '@/client/use-today'
import { useQuantities } from './use-quantities.ts'

const KEYS = ['hardness', 'freeChlorine', 'totalChlorine', 'iron', 'manganese'] as const

/** Values measured at a site on one day, at one point, in either unit system. */
export function RecordTest({ siteId }: { siteId: string }) {
  const { api, me } = useSession()
  const router = useRouter()
  const site = useQuery(api.water.site.queryOptions({ input: { siteId }, enabled: siteId !== '' }))
  const on = useDayField()
  const [point, setPoint] = useState<MeasuringPoint>('softener-inlet')
  const [softenerId, setSoftenerId] = useState('')
  const [ph, setPh] = useState('')
  const { field, read, setErrors } = useQuantities({
    hardness: me.company.unitSystem === 'us' ? 'gpg' : 'mg/L',
    freeChlorine: 'mg/L',
    totalChlorine: 'mg/L',
    iron: 'mg/L',
    manganese: 'mg/L',
  })
  const record = useCommand(api.water.recordTest.mutationOptions(), { onDone: () => router.push(`/sites/${siteId}`) })
  if (siteId === '')
    return <Problem happened="No site was chosen for this test." todo="Open the site and choose “Record a water test” there." />
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const hardness = read<'gpg' | 'mg/L' | 'dH' | 'fH' | 'mmol/L'>('hardness')
    const rest = Object.fromEntries(KEYS.slice(1).map((key) => [key, read<'mg/L' | 'ug/L'>(key)]))
    setErrors({ hardness: hardness.error, ...Object.fromEntries(Object.entries(rest).map(([key, one]) => [key, one.error])) })
    if (hardness.error || Object.values(rest).some((one) => one.error)) return
    record.send({
      siteId,
      softenerId: softenerId || undefined,
      day: on.day,
      point,
      hardness: hardness.value,
      freeChlorine: rest.freeChlorine?.value,
      totalChlorine: rest.totalChlorine?.value,
      iron: rest.iron?.value,
      manganese: rest.manganese?.value,
      ph: ph.trim() ? Number(ph.replace(',', '.')) : undefined,
    })
  }
  const failure = site.error ?? record.error
  return (
    <>
      <PageHead
        title="Record a water test"
        above={
          <TextLink href={`/sites/${siteId}`} link={Link}>
            {site.data?.siteLabel ?? 'Site'}
          </TextLink>
        }
        lead="Measured values outrank what the supply says, from their day on. Fill in what was measured and leave the rest empty."
      />
      {failure ? <Problem happened={readFailure(failure).message} kept="What you typed is still in the form." /> : null}
      <form onSubmit={submit} className="flex max-w-md flex-col gap-4">
        <DayInput label="Day" max={on.today} {...on.field} required />
        <Select
          label="Measuring point"
          value={point}
          onChange={(event) => setPoint(oneOf(measuringPoints, event.target.value) ?? 'raw')}
          choices={choicesOf(measuringPoints, measuringPointWords)}
        />
        {(site.data?.softeners.length ?? 0) > 1 ? (
          <Select
            label="Softener"
            value={softenerId}
            onChange={(event) => setSoftenerId(event.target.value)}
            none="all at this site"
            choices={site.data?.softeners.map((one) => ({ value: one.id, label: one.label })) ?? []}
          />
        ) : null}
        <NumberInput label="Hardness as CaCO₃" unit={['gpg', 'mg/L', 'dH', 'fH', 'mmol/L']} {...field('hardness')} />
        <NumberInput label="Free chlorine" unit={['mg/L', 'ug/L']} {...field('freeChlorine')} />
        <NumberInput
          label="Total chlorine"
          hint="Total less free is combined: chloramine"
          unit={['mg/L', 'ug/L']}
          {...field('totalChlorine')}
        />
        <NumberInput label="Iron" unit={['mg/L', 'ug/L']} {...field('iron')} />
        <NumberInput label="Manganese" unit={['mg/L', 'ug/L']} {...field('manganese')} />
        <NumberInput label="pH" unit="" value={ph} onChange={(event) => setPh(event.target.value)} />
        <Button kind="ink" type="submit" busy={record.isPending} busyLabel="Saving">
          Save test
        </Button>
      </form>
    </>
  )
}
