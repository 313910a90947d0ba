import { showWhole } from '@almanac/units/format-number'
import { Page, View } from '@react-pdf/renderer'
import { Logo } from '../print/letterhead.tsx'
import { Printed, SOFT, sheet } from '../print/printed.tsx'
import { TitleBlock } from '../print/title-block.tsx'
import { AsFound } from './as-found.tsx'
import { BedFigure, FIGURE, scaleOf } from './bed-figure.tsx'
import { EmptiedNote } from './emptied-note.tsx'
import { KitTable } from './kit-table.tsx'
import type { MadePlan } from './make-plan.ts'
import { CrewFacts, SiteFacts } from './site-facts.tsx'

/** Assumptions that fit at the foot of the first sheet. */
const MOST_NOTES = 5

/** Height that the drawing gives to what is said of an empty tank, points. */
const EMPTIED_NOTE = 58
const roomOf = ({ facts }: MadePlan) => (facts.emptied ? { ...FIGURE, height: FIGURE.height - EMPTIED_NOTE } : FIGURE)

/** Sheet 1: the tank to scale, where it stands, the crew and the kit. */
export function FirstPage({ plan }: { plan: MadePlan }) {
  const { facts, drawing, notes, words } = plan
  const room = roomOf(plan)
  const shown = notes.slice(0, MOST_NOTES)
  const more = notes.length - shown.length
  return (
    <Page size={plan.paper} style={sheet.page}>
      <View style={{ flexDirection: 'row', justifyContent: 'space-between' }}>
        <Printed style={{ fontSize: 17, fontFamily: 'Helvetica-Bold', flexGrow: 1, flexBasis: 0 }} lines={1}>
          {words('title', { site: facts.site.label })}
        </Printed>
        {facts.logo ? <Logo logo={facts.logo} room={{ width: 110, height: 20 }} /> : null}
      </View>
      <EmptiedNote plan={plan} />
      <View style={{ flexDirection: 'row', marginTop: 4 }}>
        <View style={{ width: room.width, height: room.height }}>
          {plan.tank ? <Printed style={{ fontFamily: 'Helvetica-Bold' }}>{plan.tank}</Printed> : null}
          {drawing.ok ? (
            <BedFigure drawing={drawing.value} room={room} />
          ) : (
            <View style={{ borderWidth: 0.7, padding: 12, margin: 20 }}>
              <Printed>{drawing.reason}</Printed>
            </View>
          )}
        </View>
        <View style={{ flexGrow: 1, flexBasis: 0, paddingLeft: 10 }}>
          <SiteFacts plan={plan} />
          <CrewFacts plan={plan} />
        </View>
      </View>
      <KitTable plan={plan} />
      <AsFound plan={plan} />
      {shown.length > 0 ? (
        <Printed style={{ fontSize: 7.5, color: SOFT, marginTop: 4 }} lines={facts.emptied ? 3 : 5}>
          {more > 0
            ? words('mindMore', { notes: shown.join(' '), count: showWhole(more, facts.display) })
            : words('mind', { notes: shown.join(' ') })}
        </Printed>
      ) : null}
      <TitleBlock cells={titleCells(plan, 1)} />
    </Page>
  )
}

/** The title block of a sheet. */
export function titleCells(plan: MadePlan, number: 1 | 2 | 3) {
  const { facts, drawing, words, tank } = plan
  const scale = drawing.ok ? `1 : ${scaleOf(drawing.value, roomOf(plan)).n}` : words('noScale')
  return [
    { name: words('firm'), value: facts.firmName, grow: 3 },
    {
      name: words('of'),
      value: [facts.site.label, tank].filter(Boolean).join(', '),
      grow: 3.4,
    },
    number === 1 ? { name: words('scale'), value: scale, grow: 1.6 } : { name: words('doneBy'), value: ' ', grow: 2.2 },
    { name: words('printed'), value: facts.printed, grow: 1.8 },
    { name: words('sheet'), value: words('sheetOf', { number: `${number}` }), grow: 0.9 },
  ]
}
