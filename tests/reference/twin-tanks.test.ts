import { jobKinds } from '@almanac/records/job-kind'
import { procedureForJob } from '@almanac/softener/procedure/procedure-for-job'
import { expect, test } from 'vitest'
import { ENGLISH } from '../support/procedure-words.ts'

// Twin softeners: common practice, no source; read over by a practitioner.
const US = { locale: 'en-US', unitSystem: 'us' as const }
const twin = (arrangement: 'twin-alternating' | 'twin-parallel' | 'single', position: number | null = 1) =>
  procedureForJob('rebed', { diameterIn: 14, heightIn: 65, display: US, twin: { position, of: 2, arrangement } }, ENGLISH)
const said = (procedure: ReturnType<typeof twin>, id: string) => {
  const step = procedure.steps.find((one) => one.id === id)
  return [step?.text, ...(step?.cautions ?? []).map((one) => one.text)].join(' ')
}

test.each(jobKinds)('%s: no step of a twin leaves open which tank, none of a single softener names one', (kind) => {
  const site = { diameterIn: 14, heightIn: 65, display: US, emergency: 'beads' as const }
  const two = procedureForJob(kind, { ...site, twin: { position: 2, of: 2, arrangement: 'twin-parallel' } }, ENGLISH)
  const open = two.steps.filter((step) => !step.title.endsWith(': tank 2 of 2')).map((step) => step.id)
  expect(open.filter((id) => id !== 'stop-and-refer' && id !== 'what-happened')).toEqual([])
  for (const step of procedureForJob(kind, site, ENGLISH).steps) expect(step.title).not.toMatch(/tank \d of/)
})

test('one tank is shut off while the other serves; what differs is said', () => {
  expect(said(twin('twin-alternating'), 'prove-bypass')).toMatch(
    /This is tank 1 of 2; the other one serves the house\. Switch the other into service/,
  )
  for (const one of ['twin-parallel', 'single'] as const)
    expect(said(twin(one), 'prove-bypass')).toMatch(/both work at once.*the other one serves the house alone, at half the flow/)
  for (const one of ['twin-alternating', 'twin-parallel'] as const) {
    expect(said(twin(one), 'prove-bypass')).toMatch(/other tank stays under full pressure/)
    expect(said(twin(one), 'remove-valve')).toMatch(/Mark each line and its tank/)
  }
  expect(said(twin('twin-alternating'), 'hand-over')).toMatch(/Change over to this tank and back/)
  expect(said(twin('twin-parallel'), 'hand-over')).toMatch(/same resin and fill/)
})

test('work on both is said to be on each in turn', () => {
  expect(twin('twin-parallel', null).steps.at(-1)?.title).toBe('Take away the old bed: each of 2 tanks in turn')
})
