import { Page, View } from '@react-pdf/renderer'
import { Printed, SOFT, sheet } from '../print/printed.tsx'
import { TitleBlock } from '../print/title-block.tsx'
import { BedFigure, FIGURE, scaleOf } from './bed-figure.tsx'
import { KitTable } from './kit-table.tsx'
import type { Plan } from './make-plan.ts'
import { CrewFacts, SiteFacts } from './site-facts.tsx'

/** Assumptions that fit at the foot of the first sheet. */
const MOST_NOTES = 5

/** Sheet 1: the tank to scale, where it stands, the crew and the kit. */
export function FirstPage({ plan }: { plan: Plan }) {
  const { facts, drawing, notes } = plan
  const shown = notes.slice(0, MOST_NOTES)
  const more = notes.length - shown.length
  return (
    <Page size={facts.display.unitSystem === 'us' ? 'LETTER' : 'A4'} style={sheet.page}>
      <Printed style={{ fontSize: 17, fontFamily: 'Helvetica-Bold' }} lines={1}>
        {`Rebed plan: ${facts.site.label}`}
      </Printed>
      <View style={{ flexDirection: 'row', marginTop: 4 }}>
        <View style={{ width: FIGURE.width, height: FIGURE.height }}>
          {drawing.ok ? (
            <BedFigure drawing={drawing.value} />
          ) : (
            <View style={{ borderWidth: 0.7, padding: 12, margin: 20 }}>
              <Printed>{drawing.reason}</Printed>
            </View>
          )}
        </View>
        <View style={{ flexGrow: 1, flexBasis: 0, paddingLeft: 10 }}>
          <SiteFacts facts={facts} />
          <CrewFacts plan={plan} />
        </View>
      </View>
      <KitTable plan={plan} />
      {shown.length > 0 ? (
        <Printed style={{ fontSize: 7.5, color: SOFT, marginTop: 4 }} lines={5}>
          {`Mind, and assumed: ${shown.join(' ')}${more > 0 ? ` And ${more} more, on the bed’s page.` : ''}`}
        </Printed>
      ) : null}
      <TitleBlock cells={titleCells(plan, 1)} />
    </Page>
  )
}

/** The title block of a sheet. */
export function titleCells({ facts, drawing }: Plan, number: 1 | 2) {
  const scale = drawing.ok ? `1 : ${scaleOf(drawing.value).n}` : 'none'
  return [
    { name: 'Firm', value: facts.firmName, grow: 3 },
    { name: 'Of', value: `${facts.site.label}, bed ${facts.bedSign}`, grow: 3.4 },
    number === 1 ? { name: 'Scale on full-size paper', value: scale, grow: 1.6 } : { name: 'Done by, on', value: ' ', grow: 2.2 },
    { name: 'Printed', value: facts.printed, grow: 1.8 },
    { name: 'Sheet', value: `${number} of 2`, grow: 0.9 },
  ]
}
