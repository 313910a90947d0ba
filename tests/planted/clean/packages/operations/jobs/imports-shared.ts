import { move } from '../shared/move.ts'

export const one = move
