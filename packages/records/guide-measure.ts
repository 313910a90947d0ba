/** What an owner measures of their tank, in the order they are asked. */
export const guideMeasures = ['around', 'height'] as const
export type GuideMeasure = (typeof guideMeasures)[number]

export const guideMeasureWords: Readonly<Record<GuideMeasure, string>> = { around: 'Around the tank', height: 'Height without the valve' }
