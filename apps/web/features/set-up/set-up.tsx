'use client'
import type { NewCompany } from '@almanac/contract/set-up'
import { type Country, countries } from '@almanac/records/country'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { zoneHere } from '@almanac/units/calendar/zone-clock'
import { type FormEvent, useEffect } from 'react'
import { LinkRefused, PublicPage } from '@/client/public-page'
import { useSendOnce } from '@/client/send-once'
import { useFields } from '@/client/use-fields'
import { CompanyFields, type CompanyTexts } from './company-fields.tsx'
import { OwnerFields } from './owner-fields.tsx'

/** What the page is made with on the server: `person` is who is signed in already, `email` whom the link was sent to. */
export type SetUpPage = {
  token: string
  person: { name: string; email: string } | null
  email: string | null
  timeZones: readonly string[]
  currencies: readonly { value: string; label: string }[]
}

const usualOf = ({ locale, unitSystem, currency, paper }: Country) => ({ locale, unitSystem, currency, paper })
const FIRST = countries[0] as Country

/** Founds a company: what it is, how it writes, when it works; and who owns it. */
export function SetUpByLink({ page }: { page: SetUpPage | { refused: string } }) {
  return 'refused' in page ? <LinkRefused refused={page.refused} /> : <SetUpForm page={page} />
}

function SetUpForm({ page: { token, person, email, timeZones, currencies } }: { page: SetUpPage }) {
  const company = useFields<CompanyTexts>(() => ({
    ...{ name: '', telephone: '', country: FIRST.code, timeZone: 'America/Chicago', dayStart: '08:00', dayEnd: '17:00' },
    ...usualOf(FIRST),
  }))
  const owner = useFields(() => ({ name: '', email: email ?? '', password: '' }))
  const { send, problem, busy } = useSendOnce(`/api/set-up/${token}`)
  const { set } = company
  // The owner's own computer most likely stands where the company works.
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the page is there
  useEffect(() => {
    const timeZone = zoneHere()
    const here = countries.find(({ code }) => code === new Intl.Locale(navigator.language).region)
    set({ ...(timeZones.includes(timeZone) ? { timeZone } : {}), ...(here ? { country: here.code, ...usualOf(here) } : {}) })
  }, [])
  const choose = (code: string) => {
    const country = countries.find((one) => one.code === code)
    set(country ? { country: code, ...usualOf(country) } : { country: '' })
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const { country: _, telephone, ...values } = company.values
    void send({ company: { ...values, telephone: telephone.trim() || null } as NewCompany, owner: person ? null : owner.values })
  }
  return (
    <PublicPage
      title="Set up your company"
      lead="This takes about two minutes. Units, currency and time zone stay as you choose them here; the rest can be changed later."
    >
      <form onSubmit={submit} className="flex flex-col gap-8">
        <CompanyFields form={company} onCountry={choose} timeZones={timeZones} currencies={currencies} />
        <OwnerFields form={owner} person={person} fixedEmail={email !== null} />
        {problem ? <Problem happened={problem} todo="What you typed is still in the form." /> : null}
        <div>
          <Button kind="ink" type="submit" busy={busy} busyLabel="Setting up">
            Set up the company
          </Button>
        </div>
      </form>
    </PublicPage>
  )
}
