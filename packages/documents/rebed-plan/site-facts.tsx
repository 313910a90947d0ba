import { knownResinKind } from '@almanac/records/resin-kind'
import { RESIN_KINDS } from '@almanac/softener/resin/resin-kinds'
import {
  formatFlowGpm,
  formatHardnessGpg,
  formatTankSize,
  formatTemperatureF,
  formatVolumeFt3,
  formatWeightLb,
} from '@almanac/units/format'
import { formatDuration } from '@almanac/units/format-clock'
import { cToF } from '@almanac/units/temperature'
import { View } from '@react-pdf/renderer'
import { LINE, Printed, SOFT, sheet } from '../print/printed.tsx'
import type { Plan } from './make-plan.ts'
import type { PlanFacts } from './plan-facts.ts'

type Row = { name: string; value: string; lines?: number }

/** Where it stands, what is in it, which water reaches it. */
export function SiteFacts({ facts }: { facts: PlanFacts }) {
  return (
    <>
      <Facts
        title="Site"
        rows={[
          { name: 'Where', value: [facts.site.street, facts.site.town].filter(Boolean).join(', ') || 'address not known', lines: 2 },
          ...(facts.site.whom ? [{ name: 'Call', value: facts.site.whom, lines: 2 }] : []),
          { name: 'Access', value: facts.site.accessNotes ?? 'nothing noted: ask before setting out', lines: 5 },
          ...(facts.softenerLabel ? [{ name: 'Softener', value: facts.softenerLabel, lines: 1 }] : []),
        ]}
      />
      <Facts title="Bed as found" rows={bedRows(facts)} />
      <Facts title="Water" rows={waterRows(facts)} />
    </>
  )
}

function bedRows({ bed, bedBegan, figures, display }: PlanFacts): Row[] {
  const { diameterIn, heightIn, volumeFt3, gravelLb, backwashGpm } = bed
  const size = diameterIn !== null && heightIn !== null ? formatTankSize(diameterIn, heightIn, display) : null
  const resinKind = knownResinKind(bed.resinKind)
  const valve = figures.valves.find((card) => card.id === bed.valveCardId)
  const resin = [
    volumeFt3 === null ? null : formatVolumeFt3(volumeFt3, display),
    resinKind === null ? 'kind not known' : RESIN_KINDS[resinKind].shortLabel,
  ]
  return [
    { name: 'Tank', value: size ?? bed.sizeAsWritten ?? 'size not known: measure it', lines: 1 },
    { name: 'Resin', value: resin.filter(Boolean).join(', ') },
    { name: 'Gravel', value: gravelLb === null ? 'not known' : gravelLb === 0 ? 'none' : formatWeightLb(gravelLb, display) },
    { name: 'Resin installed', value: bedBegan ?? 'not known', lines: 1 },
    { name: 'Valve', value: valve?.label ?? 'kind not known', lines: 1 },
    { name: 'Backwash', value: backwashGpm === null ? 'rate not known' : formatFlowGpm(backwashGpm, display) },
  ]
}

function waterRows({ water, display }: PlanFacts): Row[] {
  const source = water.source === 'private-well' ? 'private well' : water.source === 'town' ? 'town' : 'not known'
  const temperatureF = water.temperatureC === null ? null : cToF(water.temperatureC)
  return [
    { name: 'Supply', value: [source, water.disinfectant].filter(Boolean).join(', '), lines: 1 },
    { name: 'Hardness', value: formatHardnessGpg(water.hardnessGpg, display) },
    { name: 'Iron', value: water.ironMgL === null ? 'not known' : `${water.ironMgL} mg/L` },
    ...(temperatureF === null ? [] : [{ name: 'Temperature', value: formatTemperatureF(temperatureF, display) }]),
  ]
}

/** How many people, how long, what is heavy. */
export function CrewFacts({ plan }: { plan: Plan }) {
  const { kit, procedure, facts } = plan
  const time = `about ${formatDuration(procedure.minutes, facts.display)} on site`
  const rows: Row[] = kit.ok
    ? [
        { name: 'Crew', value: `${kit.value.crewSize} people, ${time}` },
        { name: 'Why', value: kit.value.crewWhy, lines: 2 },
        {
          name: 'Heaviest lift',
          value: `${kit.value.heaviestLift}, ${formatWeightLb(kit.value.heaviestLiftLb, facts.display)}`,
        },
        { name: 'Full tank', value: `${formatWeightLb(kit.value.fullTankLb, facts.display)}: never tipped by one person` },
        { name: 'Old resin out', value: formatVolumeFt3(kit.value.spentResinFt3, facts.display) },
      ]
    : [{ name: 'Crew', value: `two people or more, ${time}` }]
  return <Facts title="Crew and weights" rows={rows} />
}

function Facts({ title, rows }: { title: string; rows: readonly Row[] }) {
  return (
    <View style={{ marginBottom: 7 }}>
      <Printed style={sheet.heading}>{title}</Printed>
      {rows.map((row) => (
        <View key={row.name} style={{ flexDirection: 'row', borderBottomWidth: 0.4, borderColor: LINE, paddingVertical: 1.4 }}>
          <Printed style={{ width: 58, color: SOFT, flexShrink: 0 }}>{row.name}</Printed>
          <View style={{ flexGrow: 1, flexBasis: 0 }}>
            <Printed lines={row.lines}>{row.value}</Printed>
          </View>
        </View>
      ))}
    </View>
  )
}
