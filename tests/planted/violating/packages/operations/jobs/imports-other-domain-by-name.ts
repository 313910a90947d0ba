import { customer } from '@almanac/operations/customers/customer'

export const one = customer
