import type { OwnerVerdict } from '@almanac/records/owner-verdict'
import type { AmountDisplay } from '@almanac/units/display'
import { formatPressurePsi, formatWeightLb } from '@almanac/units/format'
import { showFixed } from '@almanac/units/format-number'
import type { Words } from '@almanac/words/words'
import { COMMERCIAL_DIAMETER_IN, type SiteAccess } from '../kit/job-weight.ts'
import { nioshLifting } from '../kit/niosh-lifting.ts'
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
export type Ground = { topic: Topic; weight: 'firm' | 'ask' | 'mind' /** In the reader's language. */; words: string }
export type OwnerAnswer = {
  verdict: OwnerVerdict
  grounds: Ground[]
  never: readonly string[]
  refer: readonly string[]
}

type OwnerWords = Words<'ownerRebed'>

/** What nobody may do, and what goes to a licensed person whoever does the rest, by key among the words. Common practice, no source; local law decides. */
const NEVER = [
  ...(['never/loosen', 'never/unplug', 'never/tip-alone', 'never/vacuum', 'never/raise-tube'] as const),
  ...(['never/tighten', 'never/mix', 'never/beads', 'never/patch'] as const),
]
const REFER = ['refer/pipe', 'refer/stop', 'refer/pressure', 'refer/bypass', 'refer/waste'] as const

/** Whether an owner can do the rebed alone. What is not known is asked, never taken as harmless: the answer is `ask-first` until it is. */
export function ownerOrFirm(question: OwnerQuestion, words: OwnerWords): OwnerAnswer {
  const grounds = [...law(question, words), ...weights(question, words), ...site(question, words)].sort(
    (a, b) => ORDER.indexOf(a.weight) - ORDER.indexOf(b.weight),
  )
  const verdict = grounds.some((one) => one.weight === 'firm')
    ? 'firm'
    : grounds.some((one) => one.weight === 'ask')
      ? 'ask-first'
      : 'owner-with-helper'
  return { verdict, grounds, never: NEVER.map((key) => words(key)), refer: REFER.map((key) => words(key)) }
}

/** What decides stands first. */
const ORDER: readonly Ground['weight'][] = ['firm', 'ask', 'mind']

const ground = (topic: Topic, weight: Ground['weight'], said: string): Ground => ({ topic, weight, words: said })

function law({ lawAllows, stopCase }: OwnerQuestion, words: OwnerWords): Ground[] {
  const grounds: Ground[] = []
  if (lawAllows === false) grounds.push(ground('law', 'firm', words('law/no')))
  if (lawAllows === null) grounds.push(ground('law', 'ask', words('law/ask')))
  if (stopCase === true) grounds.push(ground('stop', 'firm', words('stop/yes')))
  if (stopCase === null) grounds.push(ground('stop', 'ask', words('stop/ask')))
  return grounds
}

function weights({ diameterIn, fullTankLb, bagLb, access, helper, display }: OwnerQuestion, words: OwnerWords): Ground[] {
  const grounds: Ground[] = []
  const weight = formatWeightLb(fullTankLb, display)
  if (diameterIn === null || fullTankLb === null) grounds.push(ground('weight', 'ask', words('weight/ask')))
  else if (diameterIn >= COMMERCIAL_DIAMETER_IN) grounds.push(ground('weight', 'firm', words('weight/commercial', { weight })))
  else grounds.push(ground('weight', 'mind', words('weight/mind', { weight })))
  const lift = bagLb === null ? null : nioshLifting({ weightLb: bagLb, horizontalIn: 14, verticalIn: 6, travelIn: 36, coupling: 'poor' })
  if (lift?.ok && lift.value.index !== null && lift.value.index > 1) {
    const index = showFixed(lift.value.index, 1, display)
    grounds.push(ground('lift', 'mind', words('lift', { weight: formatWeightLb(bagLb, display), index })))
  }
  if (helper === false) grounds.push(ground('helper', 'firm', words('helper/no')))
  if (helper === null) grounds.push(ground('helper', 'ask', words('helper/ask')))
  if (access === 'stairs' || access === 'tight') grounds.push(ground('access', 'firm', words('access/hard')))
  if (access === null) grounds.push(ground('access', 'ask', words('access/ask')))
  return grounds
}

function site(question: OwnerQuestion, words: OwnerWords): Ground[] {
  const { hasBypass, bypassHolds, valveNeedsPower, metalPipe, pressurePsi, waterSource, display } = question
  const grounds: Ground[] = []
  if (hasBypass === false) grounds.push(ground('bypass', 'firm', words('bypass/none')))
  else if (bypassHolds === false) grounds.push(ground('bypass', 'firm', words('bypass/leaks')))
  else if (hasBypass === null || bypassHolds === null) grounds.push(ground('bypass', 'ask', words('bypass/ask')))
  if (pressurePsi === null) grounds.push(ground('pressure', 'ask', words('pressure/ask')))
  else if (!(pressurePsi <= HIGH_PRESSURE_PSI))
    grounds.push(ground('pressure', 'firm', words('pressure/high', { pressure: formatPressurePsi(pressurePsi, display) })))
  if (valveNeedsPower !== false) grounds.push(ground('valve', 'mind', words('valve')))
  if (metalPipe !== false) grounds.push(ground('pipe', 'mind', words('pipe')))
  if (waterSource === 'private-well') grounds.push(ground('waste', 'mind', words('waste')))
  return grounds
}
