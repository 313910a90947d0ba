import { knownResinKind } from '@almanac/records/resin-kind'
import {
  formatFlowGpm,
  formatHardnessGpg,
  formatTankSize,
  formatTemperatureF,
  formatVolumeFt3,
  formatWeightLb,
} from '@almanac/units/format'
import { formatDuration } from '@almanac/units/format-clock'
import { showWhole, withUnit } from '@almanac/units/format-number'
import { cToF } from '@almanac/units/temperature'
import { wordsIn } from '@almanac/words/words-in'
import { View } from '@react-pdf/renderer'
import { LINE, Printed, SOFT, sheet } from '../print/printed.tsx'
import type { MadePlan } from './make-plan.ts'

type Row = { name: string; value: string; lines?: number }

/** Where it stands, what is in it, which water reaches it. */
export function SiteFacts({ plan }: { plan: MadePlan }) {
  const { facts, words, tank } = plan
  const label = facts.softenerLabel ?? ''
  return (
    <>
      <Facts
        title={words('site')}
        rows={[
          { name: words('visit'), value: facts.visit?.when ?? words('notBooked'), lines: 1 },
          ...(facts.visit ? [{ name: words('people'), value: facts.visit.crew, lines: 2 }] : []),
          { name: words('where'), value: [facts.site.street, facts.site.town].filter(Boolean).join(', ') || words('noAddress'), lines: 2 },
          ...(facts.site.whom ? [{ name: words('call'), value: facts.site.whom, lines: 2 }] : []),
          { name: words('access'), value: facts.site.accessNotes ?? words('noAccess'), lines: 5 },
          ...(label || tank
            ? [{ name: words('softener'), value: tank ? words('softenerTank', { softener: label, tank }) : label, lines: tank ? 2 : 1 }]
            : []),
        ]}
      />
      <Facts title={words(facts.emptied ? 'bedOut' : 'bed')} rows={bedRows(plan)} />
      <Facts title={words('water')} rows={waterRows(plan)} />
    </>
  )
}

function bedRows({ facts: { bed, bedBegan, emptied, figures, display }, words }: MadePlan): Row[] {
  const { diameterIn, heightIn, volumeFt3, gravelLb, backwashGpm } = bed
  const size = diameterIn !== null && heightIn !== null ? formatTankSize(diameterIn, heightIn, display) : null
  const resinKind = knownResinKind(bed.resinKind)
  const valve = figures.valves.find((card) => card.id === bed.valveCardId)
  const resin = [
    volumeFt3 === null ? null : formatVolumeFt3(volumeFt3, display),
    resinKind === null ? words('kindUnknown') : wordsIn(display.locale, 'kit')(`${resinKind}/short`),
  ]
  return [
    { name: words('tank'), value: size ?? bed.sizeAsWritten ?? words('sizeUnknown'), lines: 1 },
    { name: words('resin'), value: resin.filter(Boolean).join(', ') },
    {
      name: words('gravel'),
      value: gravelLb === null ? words('notKnown') : gravelLb === 0 ? words('noGravel') : formatWeightLb(gravelLb, display),
    },
    ...(emptied ? [] : [{ name: words('installed'), value: bedBegan ?? words('notKnown'), lines: 1 }]),
    { name: words('valve'), value: valve?.label ?? words('kindUnknown'), lines: 1 },
    { name: words('backwash'), value: backwashGpm === null ? words('rateUnknown') : formatFlowGpm(backwashGpm, display) },
  ]
}

function waterRows({ facts: { water, display }, words }: MadePlan): Row[] {
  const source = water.source === null ? words('notKnown') : words(`source/${water.source}`)
  const disinfectant = water.disinfectant === null ? null : words(`disinfectant/${water.disinfectant}`)
  const temperatureF = water.temperatureC === null ? null : cToF(water.temperatureC)
  return [
    { name: words('supply'), value: [source, disinfectant].filter(Boolean).join(', '), lines: 1 },
    { name: words('hardness'), value: water.hardnessGpg === null ? words('notKnown') : formatHardnessGpg(water.hardnessGpg, display) },
    { name: words('iron'), value: water.ironMgL === null ? words('notKnown') : withUnit(water.ironMgL, 2, 'mg/L', display) },
    ...(temperatureF === null ? [] : [{ name: words('temperature'), value: formatTemperatureF(temperatureF, display) }]),
  ]
}

/** How many people, how long, what is heavy. */
export function CrewFacts({ plan }: { plan: MadePlan }) {
  const { kit, procedure, facts, words } = plan
  const time = formatDuration(procedure.minutes, facts.display)
  const rows: Row[] = kit.ok
    ? [
        { name: words('crewName'), value: words('crewTime', { count: showWhole(kit.value.crewSize, facts.display), time }) },
        { name: words('why'), value: kit.value.crewWhy, lines: 2 },
        {
          name: words('heaviest'),
          value: words('lift', { what: kit.value.heaviestLift, weight: formatWeightLb(kit.value.heaviestLiftLb, facts.display) }),
        },
        { name: words('fullTank'), value: words('neverAlone', { weight: formatWeightLb(kit.value.fullTankLb, facts.display) }) },
        ...(facts.emptied ? [] : [{ name: words('resinOut'), value: formatVolumeFt3(kit.value.spentResinFt3, facts.display) }]),
      ]
    : [{ name: words('crewName'), value: words('crewTimeUnknown', { time }) }]
  return <Facts title={words('crew')} rows={rows} />
}

function Facts({ title, rows }: { title: string; rows: readonly Row[] }) {
  return (
    <View style={{ marginBottom: 7 }}>
      <Printed style={sheet.heading}>{title}</Printed>
      {rows.map((row) => (
        <View key={row.name} style={{ flexDirection: 'row', borderBottomWidth: 0.4, borderColor: LINE, paddingVertical: 1.4 }}>
          <Printed style={{ width: 66, color: SOFT, flexShrink: 0 }}>{row.name}</Printed>
          <View style={{ flexGrow: 1, flexBasis: 0 }}>
            <Printed lines={row.lines}>{row.value}</Printed>
          </View>
        </View>
      ))}
    </View>
  )
}
