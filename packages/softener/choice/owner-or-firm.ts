import type { AmountDisplay } from '@almanac/units/display'
import { formatPressurePsi, formatWeightLb } from '@almanac/units/format'
import { COMMERCIAL_DIAMETER_IN, type SiteAccess } from '../kit/job-weight.ts'
import { NIOSH_LIMITS, nioshLifting } from '../kit/niosh-lifting.ts'
import { HIGH_PRESSURE_PSI } from '../procedure/procedure-facts.ts'

/** What is known of the job and of who would do it; null where nobody has asked. */
export type OwnerQuestion = {
  diameterIn: number | null
  fullTankLb: number | null
  /** The heaviest bag to lift, lb. */
  bagLb: number | null
  access: SiteAccess | null
  helper: boolean | null
  hasBypass: boolean | null
  bypassHolds: boolean | null
  valveNeedsPower: boolean | null
  metalPipe: boolean | null
  pressurePsi: number | null
  /** Whether local law lets an owner open the water pipe without a licence. */
  lawAllows: boolean | null
  /** A lead line, asbestos, a crawl space, a boil-water notice, a cracked tank. */
  stopCase: boolean | null
  waterSource: 'town' | 'private-well' | null
  display: AmountDisplay
}

export type Topic = 'law' | 'stop' | 'weight' | 'lift' | 'access' | 'helper' | 'bypass' | 'valve' | 'pipe' | 'pressure' | 'waste'
/** `firm`: this alone calls for the firm. `ask`: must be known first. `mind`: can be done, with this in mind. */
export type Ground = { topic: Topic; weight: 'firm' | 'ask' | 'mind'; words: string }
export type OwnerAnswer = {
  verdict: 'firm' | 'ask-first' | 'owner-with-helper'
  grounds: Ground[]
  never: readonly string[]
  refer: readonly string[]
}

/** What an owner must not do, whatever else; the cautions of the rebed's steps turned round. Common practice, no source. */
const NEVER: readonly string[] = [
  'Never loosen the valve before the drain has stopped in backwash: the tank is under full house pressure until then.',
  'Never unplug the valve before the pressure is out: without power it cannot let it out.',
  'Never tip or carry the full tank alone.',
  'Never drain or vacuum the tank with its opening closed: the vacuum collapses it.',
  'Never raise the tube while filling, and never leave the cap in it.',
  'Never tighten the valve beyond a quarter to half a turn past its seat, nor under pressure.',
  'Never mix bleach with iron cleaner: toxic gas.',
  'Never let beads into a drain.',
  'Never patch a cracked tank.',
]

/** What goes to a licensed person whoever does the rest. Common practice, no source; local law decides. */
const REFER: readonly string[] = [
  'Pipe work that needs a permit or license where the house is.',
  'A lead service line, asbestos, a crawl space, a boil-water notice.',
  'Pressure above 80 psi (5.5 bar): a regulator, and expansion control where flow is checked.',
  'A bypass or stop valve that does not hold.',
  'Where the old resin may go: the local waste rule.',
]

/** Whether an owner can do the rebed alone. What is not known is asked, never taken as harmless: the answer is `ask-first` until it is. */
export function ownerOrFirm(question: OwnerQuestion): OwnerAnswer {
  const grounds = [...law(question), ...weights(question), ...site(question)].sort(
    (a, b) => ORDER.indexOf(a.weight) - ORDER.indexOf(b.weight),
  )
  const verdict = grounds.some((one) => one.weight === 'firm')
    ? 'firm'
    : grounds.some((one) => one.weight === 'ask')
      ? 'ask-first'
      : 'owner-with-helper'
  return { verdict, grounds, never: NEVER, refer: REFER }
}

/** What decides stands first. */
const ORDER: readonly Ground['weight'][] = ['firm', 'ask', 'mind']

const ground = (topic: Topic, weight: Ground['weight'], words: string): Ground => ({ topic, weight, words })

function law({ lawAllows, stopCase }: OwnerQuestion): Ground[] {
  const grounds: Ground[] = []
  if (lawAllows === false) grounds.push(ground('law', 'firm', 'Local law requires a licensed person for this work.'))
  if (lawAllows === null) grounds.push(ground('law', 'ask', 'Ask the local authority: may an owner open the water pipe without a license?'))
  if (stopCase === true)
    grounds.push(
      ground('stop', 'firm', 'There is a reason to stop and refer: lead, asbestos, a crawl space, a boil-water notice or a cracked tank.'),
    )
  if (stopCase === null)
    grounds.push(ground('stop', 'ask', 'Ask about a lead line, asbestos, a crawl space, a boil-water notice, a cracked tank.'))
  return grounds
}

function weights({ diameterIn, fullTankLb, bagLb, access, helper, display }: OwnerQuestion): Ground[] {
  const grounds: Ground[] = []
  if (diameterIn === null || fullTankLb === null)
    grounds.push(ground('weight', 'ask', 'The tank’s size is not known, so neither is its weight: measure it.'))
  else if (diameterIn >= COMMERCIAL_DIAMETER_IN)
    grounds.push(ground('weight', 'firm', `A tank this wide is commercial work: full it weighs ${formatWeightLb(fullTankLb, display)}.`))
  else
    grounds.push(
      ground(
        'weight',
        'mind',
        `Full, the tank weighs ${formatWeightLb(fullTankLb, display)}: it is emptied where it stands, or tipped by two.`,
      ),
    )
  const lift = bagLb === null ? null : nioshLifting({ weightLb: bagLb, horizontalIn: 14, verticalIn: 6, travelIn: 36, coupling: 'poor' })
  if (lift?.ok && lift.value.index !== null && lift.value.index > 1)
    grounds.push(
      ground(
        'lift',
        'mind',
        `A bag of ${formatWeightLb(bagLb, display)} from the floor has a lifting index of ${lift.value.index.toFixed(1)} (NIOSH 94-110): pour it by parts, or lift it as two. ${NIOSH_LIMITS}`,
      ),
    )
  if (helper === false)
    grounds.push(
      ground('helper', 'firm', 'One person alone cannot do it: the full tank is never tipped, nor the tube held while pouring, by one.'),
    )
  if (helper === null) grounds.push(ground('helper', 'ask', 'Ask whether a second strong person is there.'))
  if (access === 'stairs' || access === 'tight')
    grounds.push(ground('access', 'firm', 'Stairs or a tight place: wet resin and a tank there are for a crew.'))
  if (access === null) grounds.push(ground('access', 'ask', 'Ask how the softener is reached: level floor, stairs, a tight corner.'))
  return grounds
}

function site(question: OwnerQuestion): Ground[] {
  const { hasBypass, bypassHolds, valveNeedsPower, metalPipe, pressurePsi, waterSource, display } = question
  const grounds: Ground[] = []
  if (hasBypass === false)
    grounds.push(
      ground('bypass', 'firm', 'There is no bypass: the house’s water must be shut off at the main, and a bypass is best put in first.'),
    )
  else if (bypassHolds === false) grounds.push(ground('bypass', 'firm', 'The bypass leaks: with the valve off it floods the room.'))
  else if (hasBypass === null || bypassHolds === null)
    grounds.push(
      ground('bypass', 'ask', 'Ask for a bypass, and have it proved: with a tap on the softener’s side open, the flow must die away.'),
    )
  if (pressurePsi === null) grounds.push(ground('pressure', 'ask', 'Ask for the water pressure, or have it measured.'))
  else if (!(pressurePsi <= HIGH_PRESSURE_PSI))
    grounds.push(
      ground(
        'pressure',
        'firm',
        `The pressure of ${formatPressurePsi(pressurePsi, display)} needs a regulator first, by a licensed person.`,
      ),
    )
  if (valveNeedsPower !== false)
    grounds.push(ground('valve', 'mind', 'The valve needs power to let the pressure out: it stays plugged in until the drain stops.'))
  if (metalPipe !== false) grounds.push(ground('pipe', 'mind', 'Metal pipe may earth the house: a bonding jumper before it is opened.'))
  if (waterSource === 'private-well')
    grounds.push(ground('waste', 'mind', 'From a well the spent resin may hold metals or radium: ask the local waste rule.'))
  return grounds
}
