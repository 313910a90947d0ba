import { View } from '@react-pdf/renderer'
import { BOLD, Printed } from '../print/printed.tsx'
import type { MadePlan } from './make-plan.ts'
import { blankFor } from './step-columns.ts'

/** What the crew finds and no step must have as a number: where to write it down. A size that nobody knows has its blank too. */
export function AsFound({ plan }: { plan: MadePlan }) {
  const { words, asks, facts } = plan
  const { diameterIn, heightIn } = facts.bed
  const blanks = [
    ...(diameterIn === null || heightIn === null ? [blankFor(words('tankSize'), 'in', facts.display)] : []),
    blankFor(asks('pressure-psi'), 'psi', facts.display),
    ...(facts.emptied ? [] : [blankFor(asks('old-beads'), null, facts.display)]),
    blankFor(asks('tank-condition'), null, facts.display),
    blankFor(asks('brine-level-in'), 'in', facts.display),
    blankFor(asks('salt-dose-lb'), 'lb', facts.display),
  ]
  return (
    <View style={{ marginTop: 5 }}>
      <Printed style={{ fontFamily: BOLD }}>{words('asFound')}</Printed>
      <Printed style={{ lineHeight: 1.5 }} lines={3}>
        {blanks.join('   ')}
      </Printed>
    </View>
  )
}
