import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { bringIn, type Firm, makeFirm, rowsOf, stateOf } from './test-import.ts'

const PLAIN = `Name,Phone,Street,Town,Tank
Ann Poe,555 201 3344,1 Elm St,Lark,10x54
Bo Dow,,2 Elm St,Lark,9x48
`
const NUMBERED = `Customer no,Name,Phone,Street,Town,Zip,Tank
C17,"Poe, Ann",(555) 201-3344,1 Elm Street,Lark,84001,10x54
C18,Bo Dow,555 201 9921,2 Elm St,Lark,84001,12x52
`

beforeAll(() => testDatabase())
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
})

const counts = async (firm: Firm) => {
  const { customers, sites, softeners, tanks, beds } = await stateOf(firm)
  return [customers, sites, softeners, tanks, beds].map((one) => one.length)
}

describe('a list that speaks of customers on record by other keys', () => {
  test('makes none twice: numbers, phones and postcodes are added, what differs is changed, and a note says why', async () => {
    const firm = await makeFirm()
    await bringIn(firm, PLAIN, 'p1.csv')
    const { done, batchId } = await bringIn(firm, NUMBERED, 'p2.csv')
    // Bo Dow's phone is new, and with it a contact.
    expect(done).toMatchObject({ created: 1, updated: 1, customers: 0, sites: 0, softeners: 0, decide: 0 })
    expect(await counts(firm)).toEqual([2, 2, 2, 2, 2])
    const { customers, contacts, sites, tanks } = await stateOf(firm)
    expect(customers.map((one) => one.reference)).toEqual(['C17', 'C18'])
    expect(contacts.map((one) => one.phone)).toEqual(['(555) 201-3344', '555 201 9921'])
    expect(sites.map((one) => one.postcode)).toEqual(['84001', '84001'])
    expect(tanks.map((one) => one.diameterIn).sort()).toEqual([10, 12])
    expect((await rowsOf(firm, batchId)).map((row) => (row.notes as string[])[0])).toEqual([
      'Matched to Ann Poe on record: the same name, phone, and address.',
      'Matched to Bo Dow on record: the same name and address.',
    ])
    // And both lists again change nothing: each finds them by what is on record by then.
    expect((await bringIn(firm, NUMBERED, 'p2.csv')).done).toMatchObject({ created: 0, updated: 0, unchanged: 2 })
    expect((await bringIn(firm, PLAIN, 'p1.csv')).done).toMatchObject({ created: 0 })
    expect(await counts(firm)).toEqual([2, 2, 2, 2, 2])
  })

  test('finds one that was typed in by hand', async () => {
    const firm = await makeFirm()
    const [customerId, siteId] = [newId(), newId()]
    await inCompany(firm, async (tx) => {
      const own = { companyId: firm.companyId }
      await tx.customer.create({ data: { ...own, id: customerId, name: 'Ann Poe' } })
      await tx.contact.create({ data: { ...own, id: newId(), customerId, role: 'payer', phone: '555 201 3344' } })
      await tx.site.create({ data: { ...own, id: siteId, label: '1 Elm St', street: '1 Elm St', town: 'Lark' } })
      await tx.tenure.create({ data: { ...own, id: newId(), siteId, customerId } })
    })
    const { done } = await bringIn(firm, NUMBERED, 'p2.csv')
    // Her softener was not on record; Bo Dow is new altogether.
    expect(done).toMatchObject({ created: 2, customers: 1, sites: 1, softeners: 2 })
    expect(await counts(firm)).toEqual([2, 2, 2, 2, 2])
  })

  test('puts before a person who only may be the same: another name at the phone', async () => {
    const firm = await makeFirm()
    await bringIn(firm, PLAIN, 'p1.csv')
    const { done, batchId } = await bringIn(firm, 'Name,Phone,Street,Town\nEd Fox,555-201-3344,9 Oak Rd,Brack\n', 'p3.csv')
    expect(done).toMatchObject({ created: 1, decide: 1 })
    expect((await rowsOf(firm, batchId))[0]?.problems).toMatchObject([
      { kind: 'decide', value: 'Ed Fox', reason: expect.stringMatching(/^May be Ann Poe, who is on record with the same phone\./) },
    ])
  })

  test('keeps two apart whose customer numbers differ', async () => {
    const firm = await makeFirm()
    await bringIn(firm, NUMBERED, 'p2.csv')
    const { done } = await bringIn(firm, NUMBERED.replace('C17', 'C99'), 'p4.csv')
    expect(done).toMatchObject({ customers: 1 })
  })

  test('looks at no other company’s', async () => {
    await bringIn(await makeFirm(), PLAIN, 'p1.csv')
    expect((await bringIn(await makeFirm(), PLAIN, 'p1.csv')).done).toMatchObject({
      created: 2,
      customers: 2,
      decide: 0,
    })
  })
})
