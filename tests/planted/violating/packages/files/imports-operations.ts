import { customer } from '../operations/customers/customer.ts'

export const one = customer
