import { b } from './chain-b.ts'

export const a = () => b
