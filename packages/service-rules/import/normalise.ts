const letters: Record<string, string> = { ß: 'ss', ø: 'o', æ: 'ae', œ: 'oe', ł: 'l', đ: 'd', ð: 'd', þ: 'th', ı: 'i' }

/** Lower case without accents: "Jørgensen" is "jorgensen", "Straße" is "strasse". */
export function foldLetters(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[ßøæœłđðþı]/g, (letter) => letters[letter] ?? letter)
}

/** Folded words with single spaces; apostrophes vanish ("O'Brien" is "obrien"), other punctuation parts words. */
export function normaliseText(text: string): string {
  return foldLetters(text)
    .replace(/['’‘`´]/g, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
}

const titles = /^(?:mr|mrs|ms|miss|dr|prof|rev|sir|herr|frau)$/

/** A name as a key: "Smith, Mr. John" and "John Smith" are one, "&" is "and", titles are dropped. */
export function normaliseName(name: string): string {
  const turned = /^([^,]+),([^,]+)$/.exec(name)
  const words = normaliseText((turned ? `${turned[2]} ${turned[1]}` : name).replace(/&/g, ' and ')).split(' ')
  const kept = words.filter((word) => !titles.test(word))
  return (kept.length > 0 ? kept : words).join(' ')
}

const streetWords: Record<string, string> = {
  rd: 'road',
  ave: 'avenue',
  av: 'avenue',
  ln: 'lane',
  dr: 'drive',
  drv: 'drive',
  blvd: 'boulevard',
  ct: 'court',
  crt: 'court',
  pl: 'place',
  ter: 'terrace',
  terr: 'terrace',
  hwy: 'highway',
  pkwy: 'parkway',
  cir: 'circle',
  sq: 'square',
  cl: 'close',
  cres: 'crescent',
  gdns: 'gardens',
  rte: 'route',
  rt: 'route',
  str: 'street',
  trl: 'trail',
  n: 'north',
  s: 'south',
  e: 'east',
  w: 'west',
  ne: 'northeast',
  nw: 'northwest',
  se: 'southeast',
  sw: 'southwest',
  apt: 'unit',
  apartment: 'unit',
  ste: 'unit',
  suite: 'unit',
  flat: 'unit',
  no: '',
  nr: '',
  mt: 'mount',
  ft: 'fort',
  hl: 'hill',
  xing: 'crossing',
  vw: 'view',
}

/** A street as a key: abbreviations are spelt out, and a house number that stands last ("Orchard Lane 14") is put first. */
export function normaliseStreet(street: string): string {
  const words = normaliseText(street.replace(/#/g, ' unit ').replace(/([A-Za-z])str\.?(?=\s|$)/g, '$1strasse'))
    .split(' ')
    .map((word, index, all) => streetWord(word, all[index + 1], index))
    .filter((word) => word !== '')
  const last = words.at(-1) ?? ''
  const numbers = words.filter((word) => /\d/.test(word))
  if (
    words.length > 1 &&
    numbers.length === 1 &&
    /^\d+[a-z]?$/.test(last) &&
    !words.includes('unit') &&
    !/^(?:route|highway)$/.test(words.at(-2) ?? '')
  ) {
    return [last, ...words.slice(0, -1)].join(' ')
  }
  return words.join(' ')
}

/** How else a street's word may be written: "ln" for "lane", "road" for "rd"; none for a word that has one way. */
export function otherStreetWords(word: string): string[] {
  if (word === 'st') return ['street', 'saint']
  const spelt = streetWords[word]
  if (spelt) return [spelt]
  return Object.keys(streetWords).filter((short) => streetWords[short] === word)
}

/** "St" before a name is a saint, "St" behind it a street: "14 St Mary's St". */
function streetWord(word: string, next: string | undefined, index: number): string {
  if (word !== 'st') return streetWords[word] ?? word
  const isStreet =
    index > 0 && (next === undefined || /\d/.test(next) || /^(?:unit|apt|flat|ste|suite|n|s|e|w|north|south|east|west)$/.test(next))
  return isStreet ? 'street' : 'saint'
}

/** The digits of a phone number, without its extension. */
export function phoneDigits(phone: string): string {
  return phone.replace(/(?:ext?|extension|x|#)\.?\s*\d+\s*$/i, '').replace(/\D/g, '')
}

/** A phone number as a key: its last nine digits, so that "+44 1632 960123" and "01632 960123" are one. */
export function normalisePhone(phone: string): string {
  return phoneDigits(phone).slice(-9)
}

/** A postcode as a key: folded, without blanks; a US ZIP+4 counts by its first five digits. */
export function normalisePostcode(postcode: string): string {
  const plain = normaliseText(postcode)
  return /^\d{5} \d{4}$/.test(plain) ? plain.slice(0, 5) : plain.replaceAll(' ', '')
}
