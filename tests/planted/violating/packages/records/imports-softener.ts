import type { Tank } from '@almanac/softener/tanks/tank'

export type Shape = Tank
