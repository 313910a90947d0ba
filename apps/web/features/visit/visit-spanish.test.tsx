import type { VisitPage } from '@almanac/contract/visits'
import { jobKinds } from '@almanac/records/job-kind'
import { measuringPoints } from '@almanac/records/measuring-point'
import { messageStates } from '@almanac/records/message-state'
import { photographKinds } from '@almanac/records/picture-kind'
import { reportRefusals } from '@almanac/records/report-mail'
import { visitOutcomes } from '@almanac/records/visit-outcome'
import { visitStops } from '@almanac/records/visit-stop'
import { missingForCloseOut } from '@almanac/service-rules/close-out/completeness'
import { USUAL_FIGURES } from '@almanac/softener/firm/usual-figures'
import { kitOf } from '@almanac/softener/rebed/kit-of-record'
import { wordsIn } from '@almanac/words/words-in'
import type { ReactNode } from 'react'
import { describe, expect, it } from 'vitest'
import { englishLeft } from '../../../../tests/support/english-left.ts'
import { procedureWords } from '../../../../tests/support/procedure-words.ts'
import { settingsRecord } from '../../../../tests/support/settings-record.ts'
import { COMPANY, SPANISH, spanishScreen } from '../../../../tests/support/spanish-screen.tsx'
import { PhotographPart } from '../../client/photographs/photograph-part.tsx'
import { ReportReader } from '../../client/report-reader.tsx'
import { CloseOutForm } from './close-out-form.tsx'
import { type Draft, emptyDraft, entered } from './draft.ts'
import { FoundSize } from './found-size.tsx'
import { shownDraft } from './prefilled.ts'
import { procedureOf } from './procedure-of.ts'
import { ProcedureSteps } from './procedure-steps.tsx'
import { recordOf } from './record-of-draft.ts'
import { SafeEndingPage } from './safe-ending-page.tsx'
import { standingStop } from './standing-stop.ts'
import { UnsentEntries } from './unsent-entries.tsx'
import { VisitBar } from './visit-bar.tsx'
import { VisitBrief } from './visit-brief.tsx'
import { VisitCard } from './visit-card.tsx'
import { VisitClosed } from './visit-closed.tsx'
import { VisitDrawing } from './visit-drawing.tsx'
import { VisitFacts } from './visit-facts.tsx'

const [LOCALE, company] = [SPANISH, COMPANY]

const BED = {
  ...{ bedId: 'b', resinKind: 'unknown', volumeFt3: null, gravelLb: null, tubeCutIn: null, diameterIn: 10, heightIn: 54 },
  ...{ nominalGrains: null, sizeAsWritten: null, tubeOdIn: null, valveCardId: null, backwashGpm: 2.4 },
}

const visitOf = (kind: VisitPage['kind'], bed: Partial<typeof BED> = {}) =>
  ({
    ...{
      visitId: 'v',
      version: 1,
      state: 'booked',
      startsAt: '2026-11-29T15:00:00Z',
      endsAt: '2026-11-29T17:00:00Z',
      day: '2026-11-29',
      kind,
    },
    ...{
      siteLabel: 'Quarry Close 2',
      street: null,
      town: null,
      crewName: 'A',
      people: ['Otis'],
      bed: { ...BED, ...bed },
      jobId: 'j',
      siteId: 's',
    },
    ...{ accessNotes: null, jobNotes: null, softenerLabel: null, twin: null, stock: [], materials: [], outcome: null, closedAt: null },
    before: [{ day: '2026-05-03', kind: 'cleaning', outcome: 'made-safe', notes: null }],
    tests: measuringPoints.map((point) => ({ day: '2026-05-03', point, hardnessGpg: 18 })),
    contacts: [{ name: null, role: 'payer', phone: '555 0134' }],
    water: { source: 'private-well', ironMgL: 0.4, temperatureC: null },
    settings: settingsRecord(),
  }) as unknown as VisitPage

const screen = (part: ReactNode) => spanishScreen('field', part)
const handle = (draft: Partial<Draft>) => ({
  ...{ draft: { ...emptyDraft, startedAt: '2026-11-29T15:00:00Z', ...draft }, ready: true, kept: true },
  ...{ change: () => {}, clear: () => {}, written: () => Promise.resolve(), throwAway: () => Promise.resolve() },
})
const procedure = (visit: VisitPage) => procedureOf(visit, company, USUAL_FIGURES, procedureWords(LOCALE))

describe.each(jobKinds)('a Spanish technician’s visit: %s', (kind) => {
  const visit = visitOf(kind)
  const { steps } = procedure(visit)

  it('brief, kit and drawing have no English', () => {
    expect(englishLeft(screen(<VisitBrief visit={visit} procedure={procedure(visit)} onStart={() => {}} onResume={() => {}} />))).toEqual(
      [],
    )
    expect(englishLeft(screen(<VisitDrawing visit={visit} height={440} />))).toEqual([])
  })
  it('no step has, answered, unanswered or with an amount that is asked back', () => {
    steps.forEach((step, at) => {
      const odd = Object.fromEntries(step.asks.map((ask) => [ask.id, { text: '99', unit: null, value: null, at: '2026-11-29T15:00:00Z' }]))
      for (const answers of [{}, odd])
        expect(
          englishLeft(
            screen(
              <ProcedureSteps procedure={procedure(visit)} handle={handle({ step: at, answers })} visit={visit} onTakeBack={() => {}} />,
            ),
          ),
          step.id,
        ).toEqual([])
    })
  })
  it.each(visitOutcomes)('nor the close-out as %s, nor what it lacks', (outcome) => {
    expect(
      englishLeft(screen(<CloseOutForm visit={visit} procedure={procedure(visit)} handle={handle({ outcome, step: steps.length })} />)),
    ).toEqual([])
    const typed = { volume: entered('900'), gravel: entered('2000'), tube: entered('400'), takenOut: entered(true), resinKind: 'gel-8' }
    const draft = shownDraft(
      { ...emptyDraft, ...typed, outcome },
      { timeZone: company.timeZone, now: '2026-11-29T17:00:00Z', beadWords: wordsIn(LOCALE, 'beadCondition') },
    )
    const by = { locale: LOCALE, units: 'us', tank: { words: '10 × 54 in', volumeFt3: 2.258, heightIn: 54 } } as const
    const record = recordOf(visit, draft, [], by)
    const spoken = {
      ...{ words: wordsIn(LOCALE, 'lacking'), outcomes: wordsIn(LOCALE, 'outcome'), stops: wordsIn(LOCALE, 'stop') },
      ...{ amounts: wordsIn(LOCALE, 'amount'), amountNames: wordsIn(LOCALE, 'amountName') },
    }
    const missing = missingForCloseOut(record, { ...spoken, outletLimitGpg: 1, display: company, tank: by.tank })
    expect(missing.length).toBeGreaterThan(0)
    expect(englishLeft(missing.join(' · '))).toEqual([])
  })
  it('nor a tank that an earlier visit left empty, nor where another size is typed', () => {
    const emptied = { day: '2026-11-20', found: 'rosca gastada', tubeIn: 43.25, gravel: 'mixed', condition: 'thread' } as const
    expect(englishLeft(screen(<VisitFacts visit={{ ...visit, emptied }} />))).toEqual([])
    expect(screen(<VisitFacts visit={{ ...visit, emptied }} />)).toContain('rosca gastada')
    expect(englishLeft(screen(<FoundSize handle={handle({})} />))).toEqual([])
  })
  it('nor the valve’s settings, with what was measured on this visit', () => {
    const measured = { 'hardness-raw-gpg': { text: '24', unit: 'gpg', value: 24, at: '2026-11-29T15:00:00Z' } }
    for (const answers of [{}, measured]) {
      const shown = screen(<VisitCard visit={visit} draft={{ answers, resinKind: '' }} />)
      expect(englishLeft(shown, ['Ablandador 1'])).toEqual([])
      // Iron counts 5 grains a mg/L (Water Quality Association's rule): 18 + 5 × 0.4 = 20, 24 + 2 = 26 gpg.
      expect(shown).toContain(answers === measured ? '26 gpg' : '20 gpg')
    }
    expect(screen(<VisitBar visit={visit} procedure={procedure(visit)} handle={handle({})} stopped={false} />)).toContain('Ajustes')
  })
  it('nor its foot, nor what another device closed', () => {
    const answers = Object.fromEntries(
      steps
        .flatMap((step) => step.asks)
        .map((ask) => [ask.id, { text: ask.choices[0]?.value ?? 'yes', unit: null, value: null, at: '2026-11-29T15:00:00Z' }]),
    )
    const parts = { visit, procedure: procedure(visit), handle: handle({ answers }) }
    expect(englishLeft(screen(<VisitBar {...parts} stopped={false} />))).toEqual([])
    expect(englishLeft(screen(<PhotographPart visitId="v" kinds={photographKinds} />))).toEqual([])
    expect(englishLeft(screen(<UnsentEntries {...parts} />))).toEqual([])
  })
  it('nor the closed visit', () => {
    for (const outcome of visitOutcomes)
      for (const waits of [true, false])
        expect(englishLeft(screen(<VisitClosed visit={{ ...visit, state: 'closed', outcome }} waits={waits} />))).toEqual([])
  })
})

describe.each(reportRefusals)('a report that is refused as %s', (refusal) => {
  it.each(messageStates)('after one that is %s is said in Spanish', (state) => {
    const last = { messageId: 'm', state, at: '2026-11-29T17:00:00Z', address: 'hanna@orchard.example', kept: true }
    const reader = { contactId: 'c', name: 'Hanna Vale', role: 'payer', email: 'hanna@orchard.example' } as const
    for (const row of [
      { ...reader, refusal, last },
      { ...reader, refusal: null, last },
      { ...reader, name: null, refusal: null, last: null },
    ])
      expect(englishLeft(screen(<ReportReader reader={row} busy={false} onSend={() => {}} />), ['Hanna Vale'])).toEqual([])
  })
})

describe.each(visitStops)('a stop: %s', (name) => {
  const [ask = '', answer = ''] = name.split('/')
  it.each(jobKinds)('in a %s is said in Spanish and takes one tap back', (kind) => {
    const visit = visitOf(kind)
    const happened = { text: ask === 'burst-from' ? 'burst' : 'beads', unit: null, value: null, at: '2026-11-29T15:00:00Z' }
    const answers = { happened, [ask]: { ...happened, text: answer } }
    const steps = procedureOf(visit, company, USUAL_FIGURES, procedureWords(LOCALE), answers)
    const stop = standingStop(visit, steps, answers)
    if (!steps.steps.some((step) => step.asks.some((one) => one.id === ask))) return expect(stop).toBeNull()
    if (!stop) throw new Error('the work goes on')
    const shown = screen(<SafeEndingPage visitId={visit.visitId} stop={stop} steps={steps.steps.length} handle={handle({ answers })} />)
    expect(englishLeft(shown)).toEqual([])
    expect(shown).toContain(`volver al paso ${stop.step + 1}`)
    expect(stop.ask).toBe(ask)
  })
})

it('of a twin brief, kit, drawing and steps name the tank, and of a single softener none does', () => {
  const single = visitOf('rebed')
  const twin = { ...single, softenerLabel: 'Ablandador 1', twin: { position: 2, of: 2, arrangement: 'twin-alternating' } } as typeof single
  const parts = (visit: typeof single) => [
    screen(<VisitFacts visit={visit} />),
    screen(<VisitBrief visit={visit} procedure={procedure(visit)} onStart={() => {}} onResume={() => {}} />),
    screen(<VisitDrawing visit={visit} height={440} />),
    screen(<ProcedureSteps procedure={procedure(visit)} handle={handle({ step: 5 })} visit={visit} onTakeBack={null} />),
  ]
  for (const shown of parts(twin)) expect(shown).toMatch(/tanque 2 de 2/i)
  // Its kit is titled by it too, beside the facts above it.
  expect(parts(twin)[1]?.match(/tanque 2 de 2/gi)?.length).toBeGreaterThan(parts(twin)[0]?.match(/tanque 2 de 2/gi)?.length ?? 0)
  for (const shown of parts(single)) expect(shown).not.toMatch(/tanque \d de \d/i)
})

it('what is counted is named in Spanish too', () => {
  const visit = visitOf('rebed')
  const at = procedure(visit).steps.findIndex((step) => step.asks.some((ask) => ask.id === 'spent-containers'))
  const shown = screen(<ProcedureSteps procedure={procedure(visit)} handle={handle({ step: at })} visit={visit} onTakeBack={null} />)
  expect(shown).toContain('baldes')
  expect(shown).not.toContain('pails')
})

describe('why each line of a kit is in it', () => {
  it.each([
    ['unknown', {}],
    ['recorded', { resinKind: 'fine-mesh', volumeFt3: 1.4, gravelLb: 18, tubeCutIn: 53, tubeOdIn: 1.05 }],
    ['commercial', { diameterIn: 24, heightIn: 72 }],
    ['too full', { volumeFt3: 3 }],
    ['nearly empty', { volumeFt3: 0.3, gravelLb: 0 }],
    ['of a size that is no tank', { diameterIn: 60, heightIn: 20 }],
    ['of no known size', { diameterIn: null, heightIn: null }],
  ] as const)('%s', (_, bed) => {
    const kit = kitOf({ ...BED, ...bed } as Parameters<typeof kitOf>[0], {
      figures: USUAL_FIGURES,
      display: company,
      words: wordsIn(LOCALE, 'kit'),
    })
    const said = kit.ok
      ? [
          ...kit.value.lines.flatMap(({ label, text, why, source }) => [label, text, why, source]),
          ...kit.assumptions,
          ...kit.missing,
          ...kit.sources,
          ...kit.value.warnings,
          kit.value.crewWhy,
          kit.value.heaviestLift,
        ]
      : [kit.reason]
    expect(englishLeft(said.join(' · '))).toEqual([])
  })
})
