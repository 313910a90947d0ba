import { expect, test } from 'vitest'
import { whomToCall } from './whom-to-call.ts'

const contact = (id: string, role: string, phone: string | null = `555 0${id}`, mayCall: boolean | null = null) => ({
  ...{ id, role, phone, otherPhones: [] as string[], mayCall, name: `Name ${id}` },
})

test('who pays is called before who lives there, whatever the order they come in', () => {
  const [payer, occupier, landlord, keyHolder] = [
    contact('4', 'payer'),
    contact('3', 'occupier'),
    contact('2', 'landlord'),
    contact('1', 'key-holder'),
  ]
  for (const order of [
    [payer, occupier, landlord, keyHolder],
    [keyHolder, landlord, occupier, payer],
  ])
    expect(whomToCall('Vance', order).called).toMatchObject({ name: 'Name 4', role: 'payer', phone: '555 04' })
  expect(whomToCall('Vance', [keyHolder, landlord, occupier]).called?.role).toBe('occupier')
})

test('whoever asked not to be called comes last, and says so; whoever has no number is no one to call', () => {
  const refused = contact('1', 'payer', '555 01', false)
  expect(whomToCall('Vance', [refused, contact('2', 'key-holder')]).called?.role).toBe('key-holder')
  expect(whomToCall('Vance', [refused]).called).toMatchObject({ mayCall: false })
  expect(whomToCall('Vance', [contact('1', 'payer', null), contact('2', 'payer', '')])).toEqual({ customerName: 'Vance', called: null })
  expect(whomToCall(null, [])).toEqual({ customerName: null, called: null })
})

test('a second number is told beside the first, and stands for it where there is no first', () => {
  const two = { ...contact('1', 'payer', '555 01'), otherPhones: ['555 09', '555 10'] }
  expect(whomToCall('Vance', [two]).called).toMatchObject({ phone: '555 01', otherPhones: ['555 09', '555 10'] })
  expect(whomToCall('Vance', [{ ...two, phone: null }]).called).toMatchObject({ phone: '555 09', otherPhones: ['555 10'] })
})

test('a contact without a name goes by the customer’s', () => {
  expect(whomToCall('Vance', [{ ...contact('1', 'payer'), name: null }]).called?.name).toBe('Vance')
})
