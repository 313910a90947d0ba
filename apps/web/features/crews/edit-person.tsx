'use client'
import type { CrewPerson } from '@almanac/contract/crews'
import { Checkbox } from '@almanac/ui/checkbox'
import { Select } from '@almanac/ui/select'
import { TextInput } from '@almanac/ui/text-input'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { AmountField } from '@/client/amount-field'
import { breakWords, shiftWords, skillList } from '@/client/crew-words'
import { ErasePerson } from '@/client/erase-person'
import { FormDialog } from '@/client/form-dialog'
import { placeWords, readPlace } from '@/client/place-text'
import { useSession } from '@/client/providers'
import { useAmounts } from '@/client/use-amounts'
import { useCommand } from '@/client/use-command'
import { useCrewSpeaking } from '@/client/use-crew-speaking'
import { useMoney } from '@/client/use-money'
import { BreakFields, useBreaks } from './break-fields.tsx'
import { ShiftFields } from './shift-fields.tsx'
import { SkillFields } from './skill-fields.tsx'

const NAMES = {
  ...{ name: 'Name', doesAll: 'Does all work', skills: 'Cleared for', shifts: 'Works', breaks: 'Breaks', personId: 'Signs in as' },
  ...{ startsAtHome: 'Starts at home', home: 'Home', overtimeMinorPerHour: 'Overtime', left: 'Left the company' },
}
type Typed = Pick<CrewPerson, 'name' | 'doesAll' | 'skills' | 'startsAtHome' | 'shifts' | 'personId' | 'left'> & {
  place: string
}
const FRESH: Omit<Typed, 'name' | 'place'> = {
  doesAll: true,
  skills: [],
  startsAtHome: false,
  shifts: [],
  personId: null,
  left: false,
}
const FULL_WEEK = [1, 2, 3, 4, 5].map((weekday) => ({ weekday, from: '08:00', until: '17:00' }))

type Props = { person: CrewPerson | null; members: readonly { personId: string; name: string }[]; onClose: () => void }

/** Adds or changes one of the people who stand on day sheets. */
export function EditPerson({ person, members, onClose }: Props) {
  const speaking = useCrewSpeaking()
  const { api, figures } = useSession()
  const money = useMoney()
  const [seen] = useState(person)
  const [values, setValues] = useState<Typed>(() => ({
    ...(person ?? FRESH),
    ...{ name: person?.name ?? '', place: placeWords(person?.home ?? null) },
  }))
  const set = (part: Partial<Typed>) => setValues((all) => ({ ...all, ...part }))
  const amounts = useAmounts({ overtime: money.rule }, { start: { overtime: { text: money.text(person?.overtimeMinorPerHour ?? null) } } })
  const breaks = useBreaks(person?.breaks ?? [])
  const [tried, setTried] = useState(false)
  const add = useCommand(api.crews.addPerson.mutationOptions(), { onDone: onClose })
  const change = useCommand(api.crews.changePerson.mutationOptions(), { onDone: onClose })
  const erase = useCommand(api.erase.colleague.mutationOptions())
  const [asked, setAsked] = useState(false)
  const counts = useQuery({
    ...api.erase.previewColleague.queryOptions({ input: { colleagueId: seen?.id ?? '' } }),
    enabled: seen !== null && asked && erase.data === undefined,
  })
  const place = readPlace(values.place)
  const homeLacks = place.ok ? (values.startsAtHome && !place.value ? 'Needed where the day starts at home.' : undefined) : place.reason
  const send = (over: CrewPerson | null) => {
    setTried(true)
    const read = amounts.read()
    const breaksRead = breaks.read()
    if (homeLacks || !place.ok || read === null || breaksRead === null) return
    const overtimeMinorPerHour = read.overtime && money.minorOf(read.overtime.value)
    const { name, doesAll, skills, startsAtHome, shifts, personId, left } = values
    const body = { name, doesAll, skills, startsAtHome, home: place.value, overtimeMinorPerHour, shifts, breaks: breaksRead }
    if (over) change.send({ ...body, personId, left, colleagueId: over.id, version: over.version })
    else add.send(body)
  }
  const show = (name: string, value: unknown) => {
    if (name === 'shifts') return shiftWords((value ?? []) as CrewPerson['shifts'], speaking)
    if (name === 'breaks') return breakWords((value ?? []) as CrewPerson['breaks'], speaking)
    if (name === 'skills') return skillList({ doesAll: false, skills: (value ?? []) as string[] }, figures.valves, speaking)
    if (name === 'home') return placeWords((value ?? null) as CrewPerson['home']) || 'nothing'
    if (name === 'personId') return members.find((one) => one.personId === value)?.name ?? 'nobody'
    if (name === 'overtimeMinorPerHour') return typeof value === 'number' ? money.words(value) : 'the company rate'
    return typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value ?? 'nothing')
  }
  return (
    <FormDialog
      title={seen ? seen.name : 'Add to day sheets'}
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(person)}
      busy={add.isPending || change.isPending}
      error={add.error ?? change.error}
      names={NAMES}
      show={show}
    >
      <TextInput label={NAMES.name} required maxLength={80} value={values.name} onChange={(event) => set({ name: event.target.value })} />
      <SkillFields doesAll={values.doesAll} skills={values.skills} onChange={set} />
      <fieldset className="flex flex-col gap-1">
        <legend className="mb-1 font-medium">Works</legend>
        <Checkbox
          label="Company hours, every working day"
          checked={values.shifts.length === 0}
          onChange={(event) => set({ shifts: event.target.checked ? [] : FULL_WEEK })}
        />
        {values.shifts.length === 0 ? null : (
          <ShiftFields shifts={values.shifts} usual={{ from: '08:00', until: '17:00' }} onChange={(shifts) => set({ shifts })} />
        )}
      </fieldset>
      <BreakFields form={breaks} />
      <Checkbox
        label="Takes the vehicle home"
        hint="Crews with this person start and end at the home, not at the yard"
        checked={values.startsAtHome}
        onChange={(event) => set({ startsAtHome: event.target.checked })}
      />
      <TextInput
        label="Home, as coordinates"
        hint="Latitude and longitude, as 41.7106, -88.4215"
        maxLength={60}
        error={tried ? homeLacks : undefined}
        value={values.place}
        onChange={(event) => set({ place: event.target.value })}
      />
      <AmountField
        label="Overtime, if different from the company’s"
        unitWords={`${money.currency} an hour`}
        {...amounts.field('overtime')}
      />
      {seen ? (
        <>
          <Select
            label={NAMES.personId}
            hint="Their own work then shows under Today’s work"
            none="nobody"
            value={values.personId ?? ''}
            choices={members.map((one) => ({ value: one.personId, label: one.name }))}
            onChange={(event) => set({ personId: event.target.value || null })}
          />
          <Checkbox
            label={NAMES.left}
            hint="Not offered for day sheets any more; past work stays on record"
            checked={values.left}
            onChange={(event) => set({ left: event.target.checked })}
          />
          <ErasePerson
            name={seen.name}
            counts={counts}
            onAsk={() => setAsked(true)}
            erase={{ ...erase, send: () => erase.send({ colleagueId: seen.id, version: seen.version }) }}
            onDone={onClose}
          >
            <p>
              Name, home and sign-in go, and whatever else names them. Day sheets and visits stay, under “Former colleague”. If they work
              for another company here, they keep their sign-in there.
            </p>
          </ErasePerson>
        </>
      ) : null}
    </FormDialog>
  )
}
