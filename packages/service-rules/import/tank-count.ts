const words: readonly [RegExp, number][] = [
  [/\b(?:twin|duplex|dual|double|pair(?:\s+of)?|two)\b[\s-]*/, 2],
  [/\b(?:triplex|triple|three)\b[\s-]*/, 3],
  [/\b(?:quad(?:ruplex)?|four)\b[\s-]*/, 4],
  [/\b(?:single|simplex|one)\b[\s-]*/, 1],
]

const followingSize =
  '(?=\\d{1,2}(?:\\.\\d+)?\\s*"?\\s*(?:x|\\*|by)\\s*\\d{2}|\\d{1,3}(?:[,.\\s]?\\d{3})*\\s*(?:k|gr)|\\d+(?:\\.\\d+)?\\s*(?:cu|cf|ft|l\\b))'
/** A count before a size: "2 x 14x65", "(2) 10x54", "2-10x54", "2 @ 48k", "2 tanks 10x54". The whole size must follow, for "8 x 44" begins with a diameter. */
const before = new RegExp(
  `^\\s*(?:\\(\\s*([1-8])\\s*\\)\\s*|([1-8])\\s*(?:x|@|-|no\\.?|off|pcs?|tanks?|ea)\\s*|([1-8])\\s+)${followingSize}`,
)
/** A count behind it: "10x54 x2", "10x54 (2)", "10x54 2 off". A third number of 4 or 6 is the tank's opening instead. */
const behind =
  /\s*(?:\(\s*(?:x\s*)?([2-8])\s*(?:tanks?|off|pcs?)?\s*\)|\sx\s*([23578])|(?<=\d\s*x\s*\d{2,3}"?)x([23578])|\s([2-8])\s*(?:off|tanks|pcs))\s*$/

/** How many tanks a text speaks of, and the text without that word; 1 where it says nothing. The text is lower-case. */
export function takeTankCount(text: string): { count: number; rest: string } {
  for (const [pattern, count] of words) {
    if (pattern.test(text)) return { count, rest: text.replace(pattern, ' ').trim() }
  }
  const tail = behind.exec(text)
  if (tail && /\dx\s*\d{2}|\d\s*x\s*\d{2}|k|gr|ft|l\b/.test(text.slice(0, tail.index))) {
    return { count: Number(tail[1] ?? tail[2] ?? tail[3] ?? tail[4]), rest: text.slice(0, tail.index) }
  }
  const head = before.exec(text)
  if (head) return { count: Number(head[1] ?? head[2] ?? head[3]), rest: text.slice(head[0].length) }
  return { count: 1, rest: text }
}
