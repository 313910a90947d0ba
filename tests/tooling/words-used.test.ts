import fs from 'node:fs'
import path from 'node:path'
import { toldSteps } from '@almanac/documents/service-report/report-facts'
import { PARAMETER_KEYS } from '@almanac/forecast/priors/forecast-parameters'
import { arrangements } from '@almanac/records/arrangement'
import { kitWays } from '@almanac/records/asked-for'
import { beadConditions } from '@almanac/records/bead-condition'
import { callComplaints } from '@almanac/records/call'
import { channels } from '@almanac/records/channel'
import { consentSources } from '@almanac/records/consent-source'
import { deviceKinds } from '@almanac/records/device-kind'
import { disinfectants, recordedDisinfectants } from '@almanac/records/disinfectant'
import { factSources } from '@almanac/records/fact-source'
import { questionKeys } from '@almanac/records/forecast-question'
import { guideMeasures } from '@almanac/records/guide-measure'
import { guideEnds } from '@almanac/records/guide-state'
import { outletReasons } from '@almanac/records/hard-outlet'
import { measurementKinds } from '@almanac/records/measurement-kind'
import { measuringPoints } from '@almanac/records/measuring-point'
import { messageStates } from '@almanac/records/message-state'
import { photographKinds } from '@almanac/records/picture-kind'
import { preTreatmentKinds } from '@almanac/records/pre-treatment-kind'
import { reportRefusals } from '@almanac/records/report-mail'
import { resinKinds } from '@almanac/records/resin-kind'
import { roles } from '@almanac/records/role'
import { signings, unsigned } from '@almanac/records/signing'
import { materialStates, materialWays, movementReasons, stockKinds } from '@almanac/records/stock'
import { supplyKinds } from '@almanac/records/supply-kind'
import { valveControls } from '@almanac/records/valve-control'
import { visitOutcomes } from '@almanac/records/visit-outcome'
import { safeSteps, visitStops } from '@almanac/records/visit-stop'
import { ERROR_CODES } from '@almanac/runtime/errors'
import { checkSteps } from '@almanac/service-rules/close-out/check-steps'
import { CAUSES } from '@almanac/softener/diagnosis/causes'
import { CHECKS } from '@almanac/softener/diagnosis/checks'
import { BEADS_AT_TAPS } from '@almanac/softener/diagnosis/emergency'
import { USUAL_VALVES } from '@almanac/softener/firm/usual-valves'
import { DEMAND_CURVES } from '@almanac/softener/flow/demand-curves'
import { FIXTURES } from '@almanac/softener/flow/fixture-units'
import { ASKS } from '@almanac/softener/identify/askable'
import { CLUE_LIMITS } from '@almanac/softener/identify/check-clues'
import { CLUE_ERRORS } from '@almanac/softener/identify/clue-errors'
import { HYDRAULIC_KEYS, SETTING_KEYS } from '@almanac/softener/site/check-site'
import { en } from '@almanac/words/en/all'
import { field } from '@almanac/words/en/field'
import { expect, test } from 'vitest'

const root = path.resolve(import.meta.dirname, '../..')

/** Rooms whose keys are values: asked for by a variable, so no file quotes them. Each is held against its enumeration or its rules by a test of its own. */
const BY_VALUE = [
  'amountName',
  'hazard',
  'jobKind',
  'jobState',
  'page',
  'beadCondition',
  'steps',
  'cautions',
  'asks',
  'contactRole',
  'endCause',
  'outcome',
  'outcomeMeaning',
  'resinKind',
  'unitWord',
]

const SEASONS = ['winter', 'summer']
const DOSE_REASONS = ['cost', 'salt', 'none', 'wanted']

/** Keys of other rooms that are values: what a close-out must have checked, resins, where a figure is from, waters, causes, checks and their answers. */
const VALUES: Record<string, readonly string[]> = {
  account: roles,
  askedFor: [...callComplaints.map((one) => `sees/${one}`), ...kitWays.map((way) => `kit/${way}`)],
  bed: [...questionKeys.flatMap((key) => [`question/${key}`, `doubt/${key}`])],
  factSource: factSources,
  forecast: [
    ...PARAMETER_KEYS.map((key) => `source/${key}`),
    ...['firm', 'some-soft', 'mushy', 'broken'].map((grade) => `found/${grade}`),
    ...['inlet', 'raw'].flatMap((where) => ['Both', 'Free', 'Combined', 'Total'].map((what) => `water/${where}${what}`)),
  ],
  history: [
    ...['bed', 'visit', 'test', 'water', 'note'].map((kind) => `kind/${kind}`),
    ...['nightly', 'import', 'supply', 'test', 'close-out', 'edit'].map((cause) => `cause/${cause}`),
    ...beadConditions.map((beads) => `beads/${beads}`),
  ],
  materials: [...materialStates.map((state) => `state/${state}`), ...materialWays.map((way) => `way/${way}`)],
  plot: measuringPoints.map((one) => `point/${one}`),
  site: [
    ...supplyKinds.map((kind) => `kind/${kind}`),
    ...arrangements.map((one) => `arranged/${one}`),
    ...preTreatmentKinds.map((kind) => `ahead/${kind}`),
    ...channels.map((channel) => `channel/${channel}`),
    ...consentSources.map((source) => `asked/${source}`),
    ...['hardness', 'free', 'total', 'iron'].map((quantity) => `quantity/${quantity}`),
  ],
  stores: [
    ...stockKinds.map((kind) => `kind/${kind}`),
    ...movementReasons.map((reason) => `reason/${reason}`),
    ...['bag', 'piece', 'set'].map((unit) => `unit/${unit}`),
  ],
  water: recordedDisinfectants.flatMap((one) => [`is/${one}`, `line/${one}`]),
  lacking: checkSteps,
  ownerSteps: [
    ...['label', 'valve', 'bypass'].flatMap((kind) => [`kind/${kind}`, `here/${kind}`]),
    ...['cap', 'bypass'].map((kind) => `hold/${kind}`),
    ...['no-picture', 'too-large', 'too-many'].map((said) => `said/${said}`),
    ...guideEnds.flatMap((end) => (end === 'soft' ? [`end/${end}`] : [`end/${end}`, `trouble/${end}`])),
    ...['untouched', 'shut-off', 'open', 'running'].map((opening) => `left/${opening}`),
  ],
  ownerMeasure: guideMeasures.flatMap((one) => ['head', 'lead', 'here', 'drawing', 'field'].map((part) => `${part}/${one}`)),
  closeOut: outletReasons.map((reason) => `outlet/${reason}`),
  stop: [...visitStops.flatMap((stop) => [`what/${stop}`, `say/${stop}`]), ...safeSteps.map((step) => `do/${step}`)],
  kit: [
    ...resinKinds.flatMap((kind) => [kind, `${kind}/short`]),
    ...['recorded', 'label', 'table', 'geometry'].map((basis) => `basis/${basis}`),
    ...['protection', 'tools', 'tests', 'spares'].map((item) => `${item}Why`),
    ...USUAL_VALVES.map(({ id }) => `valve/${id}`),
  ],
  card: [
    ...['NaCl', 'KCl'].map((salt) => `of/${salt}`),
    ...FIXTURES.map(({ id }) => `fixture/${id}`),
    ...Object.keys(DEMAND_CURVES).map((curve) => `curve/${curve}`),
    ...['leaks', 'too-often', 'iron-stays'].map((fault) => `fault/${fault}`),
    ...DOSE_REASONS.map((by) => `dose/${by}`),
    ...SEASONS.flatMap((season) => [`bed/${season}`, `bed/${season}Advised`, `right/${season}`, `fitted/${season}`]),
    ...['carries', 'short', 'far-short'].map((verdict) => `flow/${verdict}`),
    ...[...SETTING_KEYS, ...HYDRAULIC_KEYS].map((key) => `bad/${key}`),
    ...['us', 'metric'].map((system) => `plot/${system}`),
  ],
  cardWhy: [
    ...['swing', 'all'].map((assumed) => `assumed/${assumed}`),
    ...['measured', 'people', 'household'].map((basis) => `use/${basis}`),
    ...arrangements.map((one) => `tanks/${one}`),
    ...Object.keys(DEMAND_CURVES).map((curve) => `curve/${curve}`),
    ...DOSE_REASONS.map((by) => `salt/${by}`),
    ...SEASONS.flatMap((season) => [`right/${season}`, `fitted/${season}`]),
    ...['wen-yu', 'richardson-zaki'].map((model) => `model/${model}`),
    ...['NaCl', 'KCl'].map((salt) => `refill/${salt}`),
    ...['backwash', 'brine', 'fastRinse'].flatMap((step) => [`${step}/sum`, `${step}/how`]),
  ],
  ownAccount: deviceKinds,
  diagnosis: [
    ...CAUSES.flatMap(({ id, cure }) => [id, `${id}/means`, `${id}/cure`, `action/${cure}`]),
    ...CHECKS.flatMap(({ id, answers }) => [
      ...[`check/${id}`, `check/${id}/how`, `check/${id}/why`],
      ...answers.map(({ value }) => `${id}/${value}`),
    ]),
    ...['capacityShare', 'outletGpg', 'tapGpg', 'saltShareOfSetting'].map((measured) => `beyond/${measured}`),
  ],
  diagnosisCautions: [...CHECKS.flatMap(({ cautions }) => cautions.map(({ says }) => says)), 'rinse-between'],
  emergency: [...BEADS_AT_TAPS.sayNow, ...BEADS_AT_TAPS.onSite],
  whatsWrong: [
    ...['outletGpg', 'tapGpg', 'capacityShare', 'saltShareOfSetting', 'place/telephone', 'place/site', 'place/opened'],
    ...['now', 'check-first', 'today'].map((urgency) => `urgency/${urgency}`),
  ],
  whichTank: [
    ...ASKS.flatMap(({ id }) => [`ask/${id}`, `ask/${id}/how`]),
    ...['almost', 'likely', 'rather', 'open'].map((sure) => `sure/${sure}`),
    ...['round', 'rim', 'top', 'across', 'depth', 'hole'].flatMap((field) => [`field/${field}`, `field/${field}/hint`]),
    ...['jacket', ...Object.keys(CLUE_LIMITS)].map((clue) => `clue/${clue}`),
    ...Object.entries(CLUE_ERRORS).flatMap(([clue, { source }]) => [`error/${clue}`, source]),
  ],
  refusal: Object.keys(ERROR_CODES).map((code) => `code/${code}`),
  photographs: [...photographKinds.map((kind) => `kind/${kind}`), ...signings.map((answer) => `signing/${answer}`)],
  sendReport: [...reportRefusals.map((why) => `why/${why}`), ...messageStates.map((state) => `state/${state}`)],
  report: [
    ...visitOutcomes.map((outcome) => `outcome/${outcome}`),
    ...toldSteps.map((step) => `step/${step}`),
    ...valveControls.map((control) => `control/${control}`),
    ...unsigned.map((answer) => `unsigned/${answer}`),
  ],
  visit: [...arrangements.map((one) => `arrangement/${one}`), ...measuringPoints.map((one) => `point/${one}`)],
  tabletFact: measurementKinds.map((one) => `measured/${one}`),
  plan: [...supplyKinds.map((kind) => `source/${kind}`), ...disinfectants.map((one) => `disinfectant/${one}`)],
}

/** Rooms whose words travel inside something that has a name of its own. */
const CARRIED: Record<string, RegExp> = {
  diagnosis: /Diagnosis(Words|Speaking)/,
  whichTank: /(Clue|Tank)Speaking/,
  kit: /[sS]peaking|RebedFirm/,
  card: /[cC]ard(Speaking|Words|Facts)|RunningInput/,
  cardWhy: /[cC]ard(Speaking|Words|Facts)|RunningInput/,
  crewWork: /CrewSpeaking/,
  bed: /answerLink/,
  forecast: /\bSaying\b|ForecastSpeaking|forecastSpeaking|\.saying\b/,
  history: /EventSpeaking/,
  site: /BoundWords/,
  pageTitle: /ownTitle\(/,
  amount: /AmountSaid|Judgement/,
  lacking: /CloseOutWords/,
  plan: /\bMadePlan\b/,
}

const sources = ['apps/web', 'apps/worker', 'packages']
  .flatMap((folder) =>
    fs
      .readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((file) => /\.tsx?$/.test(file) && !/node_modules|\.next|generated|\.test\./.test(file))
      .map((file) => path.join(folder, file)),
  )
  .filter((file) => !/^packages\/words\/(en|es)\//.test(file))
  .map((file) => ({ file, text: fs.readFileSync(path.join(root, file), 'utf8') }))

/** Files that ask for a room: by the hook, by `wordsIn`, or by the type of its words. */
const asking = (room: string) =>
  sources.filter(
    ({ text }) =>
      new RegExp(`useWords\\('${room}'\\)|wordsIn\\(.{0,80}'${room}'\\)|Words<'${room}'>`).test(text) || CARRIED[room]?.test(text),
  )

test('every message is said somewhere', () => {
  const unsaid = Object.entries(en)
    .filter(([room]) => !BY_VALUE.includes(room))
    .flatMap(([room, messages]) => {
      const files = asking(room)
      return Object.keys(messages)

        .filter((key) => !VALUES[room]?.includes(key) && !files.some(({ text }) => text.includes(`'${key}'`)))
        .map((key) => `${room}.${key}`)
    })
  expect(unsaid).toEqual([])
})

/** Pictures that no page of the tablet draws, with words of the office. */
const OFFICE_PICTURES = /\b(due-ribbon|survival-curve|tests-over-time)(\.tsx)?\b/

test('every room is asked for, and the tablet asks for its own alone', () => {
  expect(Object.keys(en).filter((room) => asking(room).length === 0)).toEqual([])
  const tablet = sources.filter(
    ({ file }) => /^(apps\/web\/features\/(visit|today)\/|packages\/ui\/)/.test(file) && !OFFICE_PICTURES.test(file),
  )
  const beyond = tablet.flatMap(({ file, text }) =>
    [...text.matchAll(/useWords\('(\w+)'\)/g)].filter(([, room]) => !((room as string) in field)).map(([, room]) => `${file}: ${room}`),
  )
  expect(beyond).toEqual([])
  expect(tablet.filter(({ text }) => OFFICE_PICTURES.test(text)).map(({ file }) => file)).toEqual([])
})

/** A said word put beside another text, or looked into: `words('none') === shown`, `shown.includes(words('none'))`. */
const DECIDES =
  /(?:===|!==|\b(?:includes|startsWith|endsWith|indexOf|case)\(?)\s*(?:words|said|kinds|roles|states|names)\((?!\))|(?:words|said|kinds|roles|states)\('[^']*'\)\s*(?:===|!==|\.(?:includes|startsWith|endsWith|match|indexOf)\()/

test('nothing decides by what is shown', () => {
  for (const planted of ["if (words('none') === shown)", "shown.includes(words('none'))", "words('none').startsWith('N')", "=== said('x')"])
    expect(planted).toMatch(DECIDES)
  for (const fine of ["value === '' ? words('notKnown') : label", "words(value === null ? 'none' : 'one')"])
    expect(fine).not.toMatch(DECIDES)
  const speaking = sources.filter(({ text }) => /useWords\(|wordsIn\(|Words<'/.test(text))
  expect(speaking.length).toBeGreaterThan(50)
  expect(speaking.filter(({ text }) => DECIDES.test(text)).map(({ file }) => file)).toEqual([])
})
