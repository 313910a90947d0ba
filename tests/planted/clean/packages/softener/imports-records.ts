import type { ResinKindId } from '@almanac/records/resin-kind'

export type Kind = ResinKindId
