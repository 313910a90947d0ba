'use client'
import type { SitePage } from '@almanac/contract/sites'
import { siteHoursWords } from '@almanac/service-rules/day-sheets/site-hours'
import { Select } from '@almanac/ui/select'
import { TextArea } from '@almanac/ui/text-area'
import { TextInput } from '@almanac/ui/text-input'
import { useQuery } from '@tanstack/react-query'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { FormDialog } from '@/client/form-dialog'
import { placeWords, readPlace } from '@/client/place-text'
import { useSession } from '@/client/providers'
import { sharedSupplies } from '@/client/shared-supplies'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'
import { ArchiveThing } from './archive-thing.tsx'
import { PlacePin } from './place-pin.tsx'
import { VisitHoursFields } from './visit-hours.tsx'

const NAMES = {
  label: 'Name of the site',
  street: 'Street',
  town: 'Town',
  region: 'State or county',
  postcode: 'Postcode',
  accessNotes: 'Access',
  notes: 'Notes',
  waterSupplyId: 'Water supply',
  place: 'Coordinates',
  visitHours: 'Visiting hours',
}

/** Changes a site's own facts. Another supply means other water on its beds. */
export function EditSite({ site, onClose }: { site: SitePage; onClose: () => void }) {
  const { api, me } = useSession()
  // The version seen when the form opened: a change that arrives meanwhile must not be overwritten unseen.
  const [seen] = useState(site.version)
  const supplies = useQuery(api.sites.supplies.queryOptions())
  const { values, set, field } = useFields(() => ({
    label: site.label,
    street: site.street ?? '',
    town: site.town ?? '',
    region: site.region ?? '',
    postcode: site.postcode ?? '',
    accessNotes: site.accessNotes ?? '',
    notes: site.notes ?? '',
    waterSupplyId: site.supply?.id ?? '',
    place: placeWords(site.place),
  }))
  const [visitHours, setVisitHours] = useState(site.visitHours)
  const [wrong, setWrong] = useState<string>()
  const change = useCommand(api.sites.change.mutationOptions(), { onDone: onClose })
  const router = useRouter()
  const archive = useCommand(api.archive.site.mutationOptions(), { onDone: () => router.push('/sites') })
  const send = (version: number) => {
    const place = readPlace(values.place)
    setWrong(place.ok ? undefined : place.reason)
    if (place.ok)
      change.send({ siteId: site.id, version, ...values, waterSupplyId: values.waterSupplyId || null, place: place.value, visitHours })
  }
  const typed = readPlace(values.place)
  const supplyName = (id: unknown) => supplies.data?.find((one) => one.id === id)?.name ?? 'not known'
  return (
    <FormDialog
      title="Edit site"
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(site.version)}
      busy={change.isPending}
      error={change.error}
      names={NAMES}
      show={(name, value) =>
        name === 'waterSupplyId'
          ? supplyName(value)
          : name === 'place'
            ? placeWords(value as SitePage['place']) || 'nothing'
            : name === 'visitHours'
              ? (siteHoursWords(value as SitePage['visitHours'], me.company) ?? 'at any time')
              : String(value || 'nothing')
      }
    >
      <TextInput label={NAMES.label} required maxLength={120} {...field('label')} />
      <TextInput label={NAMES.street} maxLength={160} {...field('street')} />
      <TextInput label={NAMES.town} maxLength={120} {...field('town')} />
      <TextInput label={NAMES.region} maxLength={120} {...field('region')} />
      <TextInput label={NAMES.postcode} maxLength={20} {...field('postcode')} />
      <TextInput
        label={NAMES.place}
        hint="Latitude and longitude, as 41.7106, -88.4215; used to work out drives"
        error={wrong}
        maxLength={60}
        {...field('place')}
      />
      <PlacePin
        siteId={site.id}
        name={site.label}
        place={typed.ok ? typed.value : null}
        onMove={(place) => set({ place: placeWords(place) })}
      />
      <Select
        label={NAMES.waterSupplyId}
        hint="A different supply updates the forecasts of the beds here"
        none="not known"
        choices={sharedSupplies(supplies.data ?? [], site.supply?.id).map((one) => ({ value: one.id, label: one.name }))}
        {...field('waterSupplyId')}
      />
      <VisitHoursFields hours={visitHours} onChange={setVisitHours} />
      <TextArea label={NAMES.accessNotes} hint="Stairs, dogs, where the key is" {...field('accessNotes')} />
      <TextArea label={NAMES.notes} {...field('notes')} />
      <ArchiveThing
        label="Archive site"
        consequence="The site and its softeners leave every list and forecast."
        command={{ ...archive, send: (reason) => archive.send({ siteId: site.id, version: seen, reason }) }}
      />
    </FormDialog>
  )
}
