export { gallons } from './gallons.ts'
export { pounds } from './pounds.ts'
