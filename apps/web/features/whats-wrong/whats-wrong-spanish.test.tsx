import { CHECKS } from '@almanac/softener/diagnosis/checks'
import { type TriageInput, triage } from '@almanac/softener/diagnosis/triage'
import { wordsIn } from '@almanac/words/words-in'
import { describe, expect, it } from 'vitest'
import { englishLeft } from '../../../../tests/support/english-left.ts'
import { COMPANY, SPANISH, spanishScreen } from '../../../../tests/support/spanish-screen.tsx'
import { AdvicePart } from './advice-part.tsx'
import { AllChecks } from './all-checks.tsx'
import { CauseBars } from './cause-bars.tsx'
import { CheckCard } from './check-card.tsx'
import { EmergencyPanel } from './emergency-panel.tsx'
import { NextCheck } from './next-check.tsx'

const speaking = { display: COMPANY, words: wordsIn(SPANISH, 'diagnosis') }
const find = (told: Omit<TriageInput, keyof typeof speaking>) => triage({ ...told, ...speaking })
const screen = (...shown: Parameters<typeof spanishScreen>[1][]) => spanishScreen('office', shown)

describe.each(CHECKS)('what is wrong, for a Spanish technician: $id', (check) => {
  it('asked, folded and answered it has no English', () => {
    const card = (told: Parameters<typeof CheckCard>[0]['told']) => (
      <AllChecks
        key="all"
        told={told}
        render={(id) => {
          const one = CHECKS.find((other) => other.id === id)
          return one ? <CheckCard check={one} told={told} display={COMPANY} onTold={() => {}} /> : null
        }}
      />
    )
    const next = <NextCheck key="next" check={check} onAnswer={() => {}} onSkip={() => {}} />
    expect(englishLeft(screen(next, card({ answers: {}, numbers: { outletGpg: '3' } })))).toEqual([])
    for (const { value } of check.answers) expect(englishLeft(screen(card({ answers: { [check.id]: value }, numbers: {} })))).toEqual([])
  })
  it.each(check.answers.map(({ value }) => value))('nor what follows from the answer %s, and why', (value) => {
    const found = find({ answers: { [check.id]: value }, bed: { ageYears: 9 } })
    const { advice, emergency, causes } = found.value
    const shown = screen(
      <CauseBars key="causes" found={found} />,
      advice ? <AdvicePart key="advice" advice={advice} proposeHref="/jobs/new" /> : null,
      emergency ? <EmergencyPanel key="now" emergency={emergency} proposeHref="/jobs/new" /> : null,
    )
    const why = causes.flatMap(({ contributions }) => contributions.flatMap(({ answer, words }) => [answer, words]))
    expect(englishLeft([shown, ...why, ...found.assumptions, ...found.missing, ...found.sources].join(' · '))).toEqual([])
  })
})

it('what was measured, and what cannot be, is said in Spanish too', () => {
  const told = [
    { outletGpg: 1.3, tapGpg: 15, capacityShare: 0.67, saltShareOfSetting: 0.63 },
    { outletGpg: -1, tapGpg: 400, capacityShare: Number.NaN, saltShareOfSetting: 99 },
  ]
  for (const measured of told) {
    const { value, assumptions } = find({ answers: { beads: 'no', salt: 'purple' }, measured, bed: { chanceFailed: 0.4 } })
    const said = [...value.problems, ...assumptions, ...value.causes.flatMap((one) => one.contributions.map(({ answer }) => answer))]
    expect(englishLeft(said.join(' · '))).toEqual([])
  }
  expect(find({ answers: {}, measured: told[1] }).value.problems).toHaveLength(4)
})
