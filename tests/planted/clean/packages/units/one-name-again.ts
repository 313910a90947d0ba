import { gallons } from './gallons.ts'

export const litres = gallons * 3.785411784
