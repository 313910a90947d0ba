'use client'
import { Button } from '@almanac/ui/button'
import { LinkButton } from '@almanac/ui/link-button'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Select } from '@almanac/ui/select'
import { TextArea } from '@almanac/ui/text-area'
import { TextInput } from '@almanac/ui/text-input'
import { TextLink } from '@almanac/ui/text-link'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useRouter } from 'next/navigation'
import type { FormEvent } from 'react'
import { readFailure } from '@/client/failure'
import { emptyHolder, HolderFields, holderOf } from '@/client/holder-fields'
import { useSession } from '@/client/providers'
import { sharedSupplies } from '@/client/shared-supplies'
import { SoftenerFields, useSoftener } from '@/client/softener-fields'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'
import { useToday } from '@/client/use-today'

const emptyPlace = () => ({ label: '', street: '', town: '', region: '', postcode: '', accessNotes: '', waterSupplyId: '' })

/** One short form for a site with who holds it, its softener, tank and bed; only the customer's name is needed. */
export function NewSiteForm() {
  const { api, me } = useSession()
  const today = useToday()
  const router = useRouter()
  const units = me.company.unitSystem
  const place = useFields(emptyPlace)
  const holder = useFields(emptyHolder)
  const typed = useSoftener()
  const supplies = useQuery(api.sites.supplies.queryOptions())
  const add = useCommand(api.sites.add.mutationOptions(), { onDone: ({ siteId }) => router.push(`/sites/${siteId}`) })
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const softener = typed.read()
    if (softener === null) return
    const { waterSupplyId, ...rest } = place.values
    add.send({ ...rest, waterSupplyId: waterSupplyId || null, holder: holderOf(holder.values), softener })
  }
  return (
    <>
      <PageHead
        title="Add a site"
        above={
          <TextLink href="/sites" link={Link}>
            Sites
          </TextLink>
        }
        lead="Enter what you know and leave the rest blank. What’s missing turns up under “Ask at the next call”."
      />
      <form onSubmit={submit}>
        <div className="grid gap-x-12 lg:grid-cols-3">
          <div>
            <Section title="Who">
              <div className="flex flex-col gap-4">
                <HolderFields form={holder} />
              </div>
            </Section>
          </div>
          <div className="max-lg:mt-8">
            <Section title="Where">
              <div className="flex flex-col gap-4">
                <TextInput label="Street" maxLength={160} {...place.field('street')} />
                <TextInput label="Town" maxLength={120} {...place.field('town')} />
                <TextInput label="State or county" maxLength={120} {...place.field('region')} />
                <TextInput label="Postcode" maxLength={20} {...place.field('postcode')} />
                <TextInput
                  label="What you call it"
                  hint="If blank, the street or customer name is used"
                  maxLength={120}
                  {...place.field('label')}
                />
                <Select
                  label="Water supply"
                  none="not known"
                  choices={sharedSupplies(supplies.data ?? []).map((one) => ({ value: one.id, label: one.name }))}
                  {...place.field('waterSupplyId')}
                />
                <TextArea label="Access" hint="Stairs, dogs, where the key is" {...place.field('accessNotes')} />
              </div>
            </Section>
          </div>
          <div className="max-lg:mt-8">
            <Section title="The softener">
              <div className="flex flex-col gap-4">
                <SoftenerFields softener={typed} today={today} dayOrder={units === 'us' ? 'month-first' : 'day-first'} />
              </div>
            </Section>
          </div>
        </div>
        {add.error ? <Problem happened={readFailure(add.error).message} kept="What you typed is still in the form." /> : null}
        <div className="mt-6 flex gap-3 border-t border-ink pt-4">
          <Button kind="ink" type="submit" busy={add.isPending} busyLabel="Saving">
            Save the site
          </Button>
          <LinkButton href="/sites" link={Link}>
            Leave without saving
          </LinkButton>
        </div>
      </form>
    </>
  )
}
