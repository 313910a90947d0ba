import type { Site } from '@almanac/contract/sites'

export type Row = Site
