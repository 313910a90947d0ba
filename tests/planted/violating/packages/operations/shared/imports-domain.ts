import { customer } from '../customers/customer.ts'

export const one = customer
