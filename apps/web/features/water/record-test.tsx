'use client'
import { choicesOf, oneOf } from '@almanac/records/choices'
import { type MeasuringPoint, measuringPoints, measuringPointWords } from '@almanac/records/measuring-point'
import { Button } from '@almanac/ui/button'
import { DayInput } from '@almanac/ui/day-input'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Select } from '@almanac/ui/select'
import { TextLink } from '@almanac/ui/text-link'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useRouter } from 'next/navigation'
import { type FormEvent, useState } from 'react'
import { AmountField } from '@/client/amount-field'
import { reasonsOf } from '@/client/amounts'
import { readFailure } from '@/client/failure'
import { NoSiteChosen } from '@/client/no-site-chosen'
import { useSession } from '@/client/providers'
import { useAmounts } from '@/client/use-amounts'
import { useCommand } from '@/client/use-command'
import { useDayField } from '@/client/use-today'
import { concentrationOf, hardnessOf } from './water-words.ts'

const MEASURED = {
  hardness: 'hardness',
  freeChlorine: 'chlorine',
  totalChlorine: 'chlorine',
  iron: 'iron',
  manganese: 'manganese',
  ph: 'ph',
} as const

/** Values measured at a site on one day, at one point, in either unit system. */
export function RecordTest({ siteId }: { siteId: string }) {
  const { api } = useSession()
  const router = useRouter()
  const site = useQuery(api.water.site.queryOptions({ input: { siteId }, enabled: siteId !== '' }))
  const on = useDayField()
  const [point, setPoint] = useState<MeasuringPoint>('softener-inlet')
  const [softenerId, setSoftenerId] = useState('')
  const { field, read } = useAmounts(MEASURED)
  const record = useCommand(api.water.recordTest.mutationOptions(), { onDone: () => router.push(`/sites/${siteId}`) })
  if (siteId === '') return <NoSiteChosen button="Record a water test" />
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const measured = read()
    if (measured === null) return
    record.send({
      siteId,
      softenerId: softenerId || undefined,
      day: on.day,
      point,
      hardness: hardnessOf(measured.hardness),
      freeChlorine: concentrationOf(measured.freeChlorine),
      totalChlorine: concentrationOf(measured.totalChlorine),
      iron: concentrationOf(measured.iron),
      manganese: concentrationOf(measured.manganese),
      ph: measured.ph?.value,
      why: reasonsOf(measured),
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
        lead="Measured values count before the supply’s, from their date on. Enter what was measured and leave the rest blank."
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
        <AmountField label="Hardness as CaCO₃" {...field('hardness')} />
        <AmountField label="Free chlorine" {...field('freeChlorine')} />
        <AmountField label="Total chlorine" hint="Total minus free is combined chlorine: chloramine" {...field('totalChlorine')} />
        <AmountField label="Iron" {...field('iron')} />
        <AmountField label="Manganese" {...field('manganese')} />
        <AmountField label="pH" {...field('ph')} />
        <Button kind="ink" type="submit" busy={record.isPending} busyLabel="Saving">
          Save test
        </Button>
      </form>
    </>
  )
}
