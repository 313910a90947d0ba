import { NoSuchRecord } from '@/server/nothing-here'

export default NoSuchRecord
