import { log } from '@almanac/runtime/log'

export const say = log
