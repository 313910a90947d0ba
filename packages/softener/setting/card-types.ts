import type { Words } from '@almanac/words/words'
import type { Speaking } from '../kit/speaking.ts'
import type { SiteInput } from '../site/site-input.ts'

/** What one may ask about a number, in sentences. */
export type WhyWords = {
  title: string
  /** The answer in one plain sentence, before any figure or method. */
  summary: string
  inputs: { name: string; value: string; from?: string }[]
  formula: string
  assumptions: string[]
  missing: string[]
  source: string
}

/** One line of the card: what it is called, what stands beside it, and why. */
export type CardLine = { id: string; label: string; value: string; hint?: string; why: WhyWords }

export type SettingsCard = {
  control: 'meter' | 'timer'
  /** What to enter or set at the valve. */
  enter: CardLine[]
  /** Steps of the regeneration, in order. */
  steps: CardLine[]
  /** What follows for the house. */
  follows: CardLine[]
  /** For people who drink the water. */
  cautions: string[]
  warnings: string[]
}

/** Where the values of a site come from, in words: "test of 3 May 2026". */
export type SiteSources = Partial<Record<keyof SiteInput, string>>

/** How settings are said: amounts in the company's units, lines and their reasons in the reader's language. */
export type CardSpeaking = Speaking & { card: Words<'card'>; why: Words<'cardWhy'>; kinds: Words<'resinKind'> }

export type CardWords = CardSpeaking & { sources: SiteSources }
