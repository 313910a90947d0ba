'use client'
import type { SoftenerSettings } from '@almanac/contract/softeners'
import { FIXTURES, type FixtureCounts, type FixtureId, usualFixtures } from '@almanac/softener/flow/fixture-units'
import { seasonTemperatures } from '@almanac/softener/site/site-water'
import { Button } from '@almanac/ui/button'
import { Select } from '@almanac/ui/select'
import { formatTemperatureF } from '@almanac/units/format'
import { useSession } from '@/client/providers'
import type { CardChanges } from './card-address.ts'
import { type CardSite, waterFactWords } from './site-of-record.ts'
import { ValueField } from './value-field.tsx'

type Props = { record: SoftenerSettings; site: CardSite; changes: CardChanges; change: (change: Partial<CardChanges>) => void }

/** What the card is worked out from, as recorded, to be changed for this page alone. */
export function CardInputs({ record, site, changes, change }: Props) {
  const { me } = useSession()
  const metric = me.company.unitSystem === 'metric'
  const { input, sources } = site
  const temperature = { kind: 'waterTemperature', unit: metric ? 'C' : 'F', unitWords: metric ? '°C' : '°F' } as const
  const season = seasonTemperatures(input.coldestF, input.warmestF, input.usualF)
  const taken = (source: string | undefined, f: number) =>
    source ?? `${formatTemperatureF(f, me.company)} taken${sources.usualF ? `, from ${sources.usualF}` : ''}`
  return (
    <details className="mb-6 border-y border-line py-3 print:hidden" open>
      <summary className="font-semibold">What it’s based on</summary>
      <p className="mt-1 max-w-[75ch] text-small text-soft">
        From the record. What you change here counts on this page and its address only; nothing is saved.
      </p>
      <div className="mt-3 grid items-end gap-x-8 gap-y-4 sm:grid-cols-2 lg:grid-cols-4">
        <ValueField
          label="People"
          kind="people"
          unit="people"
          hint={record.peopleServed === null ? 'not on record' : `${record.peopleServed} on record`}
          value={input.people}
          onValue={(people) => change({ people })}
        />
        <ValueField
          label="Hardness, raw"
          kind="hardness"
          unit={metric ? 'mg/L' : 'gpg'}
          hint={sources.hardnessGpg ?? waterFactWords(record.water.hardnessGpg, record, me.company) ?? 'not on record'}
          value={input.hardnessGpg}
          onValue={(hardnessGpg) => change({ hardnessGpg })}
        />
        <ValueField
          label="Coldest water"
          {...temperature}
          hint={taken(sources.coldestF, season.coldestF)}
          value={input.coldestF}
          onValue={(coldestF) => change({ coldestF })}
        />
        <ValueField
          label="Warmest water"
          {...temperature}
          hint={taken(sources.warmestF, season.warmestF)}
          value={input.warmestF}
          onValue={(warmestF) => change({ warmestF })}
        />
        <Select
          label="Salt"
          value={changes.salt}
          choices={[
            { value: 'NaCl', label: 'Sodium chloride' },
            { value: 'KCl', label: 'Potassium chloride' },
          ]}
          onChange={(event) => change({ salt: event.target.value === 'KCl' ? 'KCl' : 'NaCl', doseLbFt3: null })}
        />
        <Select
          label="Valve"
          value={input.control ?? ''}
          none={input.control === null ? 'not on record' : undefined}
          choices={[
            { value: 'meter', label: 'By meter' },
            { value: 'timer', label: 'By timer' },
          ]}
          onChange={(event) =>
            change({ control: event.target.value === 'timer' ? 'timer' : event.target.value === 'meter' ? 'meter' : null })
          }
        />
        <Select
          label="Expansion by"
          value={changes.model}
          choices={[
            { value: 'richardson-zaki', label: 'Richardson and Zaki' },
            { value: 'wen-yu', label: 'Wen and Yu, more cautious' },
          ]}
          onChange={(event) => change({ model: event.target.value === 'richardson-zaki' ? 'richardson-zaki' : 'wen-yu' })}
        />
      </div>
      <Fixtures counts={changes.fixtures} people={input.people} change={change} />
    </details>
  )
}

function Fixtures({ counts, people, change }: { counts: FixtureCounts | null; people: number | null; change: Props['change'] }) {
  const shown = counts ?? usualFixtures(people)
  const put = (id: FixtureId, count: number | null) => change({ fixtures: { ...shown, [id]: count ?? 0 } })
  return (
    <details className="mt-4">
      <summary className="w-fit">What uses water: {counts ? 'counted' : 'as usual for this many people'}</summary>
      <div className="mt-3 grid items-end gap-x-8 gap-y-4 sm:grid-cols-2 lg:grid-cols-4">
        {FIXTURES.map(({ id, label, wsfu }) => (
          <ValueField
            key={id}
            label={label}
            kind="fixtures"
            unit=""
            unitWords={`× ${wsfu}`}
            value={shown[id] ?? 0}
            onValue={(count) => put(id, count)}
          />
        ))}
      </div>
      {counts ? (
        <div className="mt-3">
          <Button onClick={() => change({ fixtures: null })}>Back to the usual home</Button>
        </div>
      ) : null}
    </details>
  )
}
