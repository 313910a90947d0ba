'use client'
import type { SoftenerSettings } from '@almanac/contract/softeners'
import { FIXTURES, type FixtureCounts, type FixtureId, usualFixtures } from '@almanac/softener/flow/fixture-units'
import { seasonTemperatures } from '@almanac/softener/site/site-water'
import { Button } from '@almanac/ui/button'
import { Select } from '@almanac/ui/select'
import { formatTemperatureF } from '@almanac/units/format'
import { useWords } from '@almanac/words/use-words'
import { useSession } from '@/client/providers'
import type { CardChanges } from '@/client/settings-card/card-changes'
import { type CardSite, waterFactWords } from '@/client/settings-card/site-of-record'
import { ValueField } from './value-field.tsx'

type Props = { record: SoftenerSettings; site: CardSite; changes: CardChanges; change: (change: Partial<CardChanges>) => void }

/** What the card is worked out from, as recorded, to be changed for this page alone. */
export function CardInputs({ record, site, changes, change }: Props) {
  const { me } = useSession()
  const card = useWords('card')
  const unitWord = useWords('unitWord')
  const metric = me.company.unitSystem === 'metric'
  const { input, sources } = site
  const temperature = { kind: 'waterTemperature', unit: metric ? 'C' : 'F', unitWords: metric ? '°C' : '°F' } as const
  const season = seasonTemperatures(input.coldestF, input.warmestF, input.usualF)
  const taken = (source: string | undefined, f: number) =>
    source ??
    (sources.usualF
      ? card('takenFrom', { amount: formatTemperatureF(f, me.company), source: sources.usualF })
      : card('taken', { amount: formatTemperatureF(f, me.company) }))
  return (
    <details className="mb-6 border-y border-line py-3 print:hidden" open>
      <summary className="font-semibold">{card('basedOn')}</summary>
      <p className="mt-1 max-w-[75ch] text-small text-soft">{card('basedOnLead')}</p>
      <div className="mt-3 grid items-end gap-x-8 gap-y-4 sm:grid-cols-2 lg:grid-cols-4">
        <ValueField
          label={card('people')}
          kind="people"
          unit="people"
          unitWords={unitWord('people')}
          hint={record.peopleServed === null ? card('notOnRecord') : card('peopleOnRecord', { people: String(record.peopleServed) })}
          value={input.people}
          onValue={(people) => change({ people })}
        />
        <ValueField
          label={card('rawHardness')}
          kind="hardness"
          unit={metric ? 'mg/L' : 'gpg'}
          hint={
            sources.hardnessGpg ?? waterFactWords(record.water.hardnessGpg, record, { display: me.company, card }) ?? card('notOnRecord')
          }
          value={input.hardnessGpg}
          onValue={(hardnessGpg) => change({ hardnessGpg })}
        />
        <ValueField
          label={card('coldest')}
          {...temperature}
          hint={taken(sources.coldestF, season.coldestF)}
          value={input.coldestF}
          onValue={(coldestF) => change({ coldestF })}
        />
        <ValueField
          label={card('warmest')}
          {...temperature}
          hint={taken(sources.warmestF, season.warmestF)}
          value={input.warmestF}
          onValue={(warmestF) => change({ warmestF })}
        />
        <Select
          label={card('salt')}
          value={changes.salt}
          choices={[
            { value: 'NaCl', label: card('NaCl') },
            { value: 'KCl', label: card('KCl') },
          ]}
          onChange={(event) => change({ salt: event.target.value === 'KCl' ? 'KCl' : 'NaCl', doseLbFt3: null })}
        />
        <Select
          label={card('valve')}
          value={input.control ?? ''}
          none={input.control === null ? card('notOnRecord') : undefined}
          choices={[
            { value: 'meter', label: card('byMeter') },
            { value: 'timer', label: card('byTimer') },
          ]}
          onChange={(event) =>
            change({ control: event.target.value === 'timer' ? 'timer' : event.target.value === 'meter' ? 'meter' : null })
          }
        />
        <Select
          label={card('expansionBy')}
          value={changes.model}
          choices={[
            { value: 'richardson-zaki', label: card('model/richardson-zaki') },
            { value: 'wen-yu', label: card('model/wen-yu') },
          ]}
          onChange={(event) => change({ model: event.target.value === 'richardson-zaki' ? 'richardson-zaki' : 'wen-yu' })}
        />
      </div>
      <Fixtures counts={changes.fixtures} people={input.people} change={change} />
    </details>
  )
}

function Fixtures({ counts, people, change }: { counts: FixtureCounts | null; people: number | null; change: Props['change'] }) {
  const card = useWords('card')
  const shown = counts ?? usualFixtures(people)
  const put = (id: FixtureId, count: number | null) => change({ fixtures: { ...shown, [id]: count ?? 0 } })
  return (
    <details className="mt-4">
      <summary className="w-fit">{card(counts ? 'fixturesCounted' : 'fixturesUsual')}</summary>
      <div className="mt-3 grid items-end gap-x-8 gap-y-4 sm:grid-cols-2 lg:grid-cols-4">
        {FIXTURES.map(({ id, wsfu }) => (
          <ValueField
            key={id}
            label={card(`fixture/${id}`)}
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
          <Button onClick={() => change({ fixtures: null })}>{card('backToUsual')}</Button>
        </div>
      ) : null}
    </details>
  )
}
