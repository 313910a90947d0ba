import type { SoftenerSettings } from '@almanac/contract/softeners'

/** What a record says for setting a softener of one 10 × 54 in tank; all names are invented. */
export const settingsRecord = (more: Partial<SoftenerSettings> = {}): SoftenerSettings => ({
  ...{ id: '019b0000-0000-7000-8000-00000000000a', label: 'Ablandador 1', arrangement: 'single', peopleServed: 4 },
  site: { id: '019b0000-0000-7000-8000-00000000000b', label: 'Quarry Close 2', town: null },
  supplyName: null,
  tanks: [
    {
      ...{
        id: '019b0000-0000-7000-8000-00000000000c',
        position: 1,
        diameterIn: 10,
        heightIn: 54,
        nominalGrains: null,
        sizeAsWritten: null,
      },
      bed: {
        ...{ id: '019b0000-0000-7000-8000-00000000000d', resinKind: 'gel-8', volumeFt3: 1.5, gravelLb: 18, tubeCutIn: 52.125 },
        ...{ beganEarliest: '2016-04-01', beganLatest: '2016-04-30' },
      },
      valve: { label: '', control: 'meter', backwashGpm: 2.4, tubeOdIn: 1.05, cardId: null },
    },
  ],
  water: {
    hardnessGpg: { value: 18, from: 'test', day: '2026-05-03' },
    ironMgL: { value: 0.4, from: 'test', day: '2026-05-03' },
    ...{ manganeseMgL: null, dissolvedSolidsMgL: null, coldestC: null, warmestC: null },
  },
  ...more,
})
