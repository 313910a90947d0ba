import type { Disinfectant } from '@almanac/records/disinfectant'
import { type Reading, read, unreadable } from './reading.ts'

/** What a supply is disinfected with. Monochloramine counts as chloramine; UV and ozone leave nothing that reaches the bed. */
export function readDisinfectant(text: string): Reading<Disinfectant> {
  const plain = text.toLowerCase()
  if (/chl?or[aeiou]*m+[aeio]n|\bnh2cl\b|\bchloram/.test(plain)) return read('chloramine')
  if (/^(?:none|no|nil|0|untreated|not (?:treated|disinfected|chlorinated)|un-?chlorinated|(?:no|non).?chlor.*)$/.test(plain))
    return read('none')
  if (/^(?:uv|u\.v\.|ultra-?violet|ozone)\b/.test(plain))
    return read('none', `"${text}" leaves no disinfectant in the water: read as none.`)
  if (/\bchlorine dioxide\b|\bclo2\b/.test(plain))
    return unreadable(`"${text}" isn’t chlorine, chloramine or none. Leave it blank and put it in the notes.`)
  if (/\bchlorin|^(?:free |total )?(?:chlor|cl2?)\.?$|hypochlor|\bbleach/.test(plain)) return read('free-chlorine')
  return unreadable(`"${text}" isn’t a disinfectant we know. Type chlorine, chloramine or none, or leave it blank.`)
}
