import { page, reading, type Sample, version } from './sample-call.ts'

const contact = { role: 'occupier', name: 'Ilse Vale', phone: '555 0188', email: '' }
const known = (customerId: string) => ({ kind: 'known', customerId })

const told = {
  ...{ access: 'stairs', helper: null, hasBypass: null, bypassHolds: null, valveNeedsPower: null },
  ...{ metalPipe: null, lawAllows: null, stopCase: null, pressurePsi: null },
}
export const bedChoice: Record<string, Sample> = {
  facts: { roles: 'od', input: (r) => ({ bedId: r.bedId }) },
  keepDecision: {
    roles: 'od',
    input: (r) => ({ bedId: r.bedId, told, verdict: 'firm', law: '' }),
    other: { law: 'Township, by phone' },
  },
}

export const beds: Record<string, Sample> = {
  explain: { roles: 'odt', input: (r) => ({ bedId: r.bedId }) },
  page: { roles: 'odt', input: (r) => ({ bedId: r.bedId }) },
  askNext: { roles: 'od', input: () => page },
  changeFacts: {
    roles: 'od',
    input: (r) => ({ bedId: r.bedId, version, tankVersion: 1, valveVersion: 1, source: 'call', facts: { resinKind: 'gel-10' } }),
  },
  inspect: {
    roles: 'od',
    input: (r) => ({
      ...{ bedId: r.bedId, day: '2026-12-01', beadCondition: 'firm', capacityShare: null, moistureShare: null, pressureDrop: null },
      working: true,
    }),
  },
}

const ownText = { subject: 'Your softener', body: 'Dear {{ name }}, answer here: {{ answer_link }}' }

export const reminders: Record<string, Sample> = {
  list: { roles: 'od', input: () => ({ ...page, state: 'waiting' }) },
  counts: { roles: 'od' },
  messages: { roles: 'od', input: () => ({ ...page, list: 'outbox' }) },
  answers: { roles: 'od', input: () => page },
  texts: { roles: 'od' },
  previewText: { roles: 'od', input: (r) => ({ channel: 'email', language: 'en', ...ownText, bedId: r.bedId, siteId: r.siteId }) },
  saveText: { roles: 'o', input: () => ({ channel: 'email', language: 'en', version: 0, ...ownText }), other: { subject: 'Your resin' } },
  standardText: { roles: 'o', input: () => ({ channel: 'letter', language: 'en', version }), other: { version: 2 } },
  endLink: { roles: 'od', input: (r) => ({ reminderId: r.reminderId }) },
  preview: { roles: 'od', input: (r) => ({ reminderId: r.reminderId }) },
  step: { roles: 'od', input: (r) => ({ messages: [{ id: r.messageId, version }], event: 'mark-sent' }) },
  decide: { roles: 'o', input: (r) => ({ reminders: [{ id: r.reminderId, version }], decision: 'release' }) },
}

export const sites: Record<string, Sample> = {
  list: { roles: 'odt', input: () => ({ ...page, q: 'orchard' }) },
  page: { roles: 'odt', input: (r) => ({ siteId: r.siteId }) },
  history: { roles: 'odt', input: (r) => ({ siteId: r.siteId }) },
  nearby: { roles: 'odt', input: (r) => ({ siteId: r.siteId }) },
  supplies: { roles: 'odt' },
  customers: { roles: 'od', input: () => ({ q: 'Hanna' }) },
  add: { roles: 'od', input: (r) => ({ label: 'Weir Road 8', waterSupplyId: r.waterSupplyId, holder: known(r.customerId) }) },
  change: { roles: 'od', input: (r) => ({ siteId: r.siteId, version, label: 'Orchard Lane 14 b', waterSupplyId: r.waterSupplyId }) },
  changeCustomer: { roles: 'od', input: (r) => ({ customerId: r.customerId, version, name: 'Hanna Vale-Orr' }) },
  changeHolder: {
    roles: 'od',
    input: (r) => ({ siteId: r.siteId, tenureVersion: 1, fromDay: '2026-12-01', holder: known(r.otherCustomerId) }),
  },
  addContact: { roles: 'od', input: (r) => ({ siteId: r.siteId, ...contact }) },
  changeContact: { roles: 'od', input: (r) => ({ contactId: r.contactId, version, ...contact }) },
  archiveContact: { roles: 'od', input: (r) => ({ contactId: r.contactId, version }) },
  setConsent: {
    roles: 'od',
    input: (r) => ({ contactId: r.contactId, channel: 'email', granted: false, source: 'call', sinceDay: '2026-12-01', version }),
  },
  addSoftener: { roles: 'od', input: (r) => ({ siteId: r.siteId, softener: { label: 'Cellar softener', tankSize: '10x54' } }) },
  changeSoftener: {
    roles: 'od',
    input: (r) => ({ softenerId: r.softenerId, version, label: 'Garage softener', arrangement: 'single', peopleServed: 4 }),
  },
  addPreTreatment: { roles: 'od', input: (r) => ({ softenerId: r.softenerId, kind: 'sediment', fromDay: null, source: 'call' }) },
  endPreTreatment: { roles: 'od', input: (r) => ({ preTreatmentId: r.preTreatmentId, version, toDay: '2026-11-30' }) },
}

export const softeners: Record<string, Sample> = {
  settings: { roles: 'odt', input: (r) => ({ softenerId: r.softenerId }) },
}

export const water: Record<string, Sample> = {
  supplies: { roles: 'odt', input: () => page },
  supply: { roles: 'odt', input: (r) => ({ waterSupplyId: r.waterSupplyId }) },
  addSupply: { roles: 'od', input: () => ({ name: 'Weir village', kind: 'town' }), other: { name: 'Weir mill' } },
  addPeriod: {
    roles: 'od',
    input: (r) => ({ waterSupplyId: r.waterSupplyId, fromDay: '2026-11-01', disinfectant: 'chloramine', source: 'notice' }),
  },
  withdrawPeriod: { roles: 'od', input: (r) => ({ id: r.periodId, version }) },
  site: { roles: 'odt', input: (r) => ({ siteId: r.siteId }) },
  recordTest: {
    roles: 'od',
    input: (r) => ({ siteId: r.siteId, softenerId: r.softenerId, day: '2026-12-01', point: 'raw', hardness: reading }),
  },
  withdrawTest: { roles: 'od', input: (r) => ({ id: r.testId, version }) },
}
