/**
 * A service company's own list as it grew in fifteen years, of 3,000 lines, made from a seed. What the lines come to is counted here, house by house while they are
 * written, by whoever makes them and not by reading them: what the app says of the list is held against it.
 *
 * Its mess: titles above the headings and headings of the shop's own; letters of an old Windows and semicolons; section titles, totals and repeated headings between the
 * customers; lines without a name; dates in nine ways and in words; tanks in eight; telephones in six, two in a cell, or turned into a figure by a spreadsheet; emails that are
 * none; hardness in grains, in mg/L and in words; towns and supplies in any case; the same house twice, its name turned round and its street short; rebeds that stand in the
 * remarks alone, and quotes for some that never came; customers who died, moved, gave the softener away or want no calls.
 */
export type UglyList = {
  bytes: Uint8Array
  /** Lines under the headings. */
  lines: number
  leftOut: number
  /** Lines with a cell that nobody can read. */
  leftEmpty: number
  /** Lines that ask a person to decide. */
  decide: number
  customers: number
  sites: number
  softeners: number
  beds: number
  /** Beds that no line says were seen working. */
  unseen: number
  /** Beds that went in more than 21 years ago; none is between 19 and 21. */
  old: number
  bedsOfTown: Record<string, number>
  bedsOfSupply: Record<string, number>
  /** A customer with one softener, to telephone about. */
  caller: { name: string; street: string; second: string }
}

const LINES = 3_000
const HEADINGS = [
  'Rte',
  'Customer',
  'Address',
  'Town',
  'Tel',
  'Cell',
  'E-mail',
  'Put in',
  'Size',
  'Hard',
  'Water source',
  'Last visit',
  'Remarks',
]
const FIRST = ['Ann', 'Bo', 'Cora', 'Dov', 'Edda', 'Finn', 'Greta', 'Hal', 'Ida', 'José', 'Kay', 'Lior', 'Mäve', 'Nell', 'Otto', 'Pia']
const LAST = [
  'Abernay',
  'Bexley',
  'Crumb',
  'Dufoe',
  'Eddowes',
  'Fjord',
  'Grübel',
  'Hask',
  'Ivory',
  'Jessop',
  'Kettler',
  'Lund',
  'Muñoz',
  'Norrby',
]
const STREETS = ['Mill', 'Orchard', 'Quarry', 'Ferry', 'Saltmarsh', 'Weir', 'Tannery', 'Kiln']
const TOWNS = ['Lowmoor', 'Fenwick Cross', 'Brindle Ford']
const SUPPLIES = ['Lowmoor Municipal', 'Fenwick District', '']
const ONE_TANK = ['10x54', '1054', '10" x 54"', '9 x 48', '48k', '32,000 grain', '1.5 cu ft']
const UNREAD = { date: 'when Jim was here', tank: 'the big blue one', hardness: 'very hard', email: 'ask his wife' }
const DECIDE = ['DO NOT CALL', 'passed away in spring', 'moved out, house empty', 'unit removed']
const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December']

/** Equal seeds give equal lists: a 32-bit counter mixed twice (splitmix32). */
function chances(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x9e3779b9) >>> 0
    const once = Math.imul(state ^ (state >>> 16), 0x21f0aaad)
    const twice = Math.imul(once ^ (once >>> 15), 0x735a2d97)
    return ((twice ^ (twice >>> 15)) >>> 0) / 2 ** 32
  }
}

type House = { name: [string, string]; street: string; cells: string[]; isTwin: boolean }

/** @param thisYear the year in which the list is brought in: everything in it lies two years back and more, but for visits */
export function uglyList(seed: number, thisYear: number): UglyList {
  const chance = chances(seed)
  const of = <T>(all: readonly T[]): T => all[Math.floor(chance() * all.length)] as T
  const within = (from: number, until: number) => from + Math.floor(chance() * (until - from + 1))
  const caller = { name: '', street: '', second: '' }
  const count = { leftOut: 0, leftEmpty: 0, decide: 0, customers: 0, sites: 0, softeners: 0, beds: 0, unseen: 0, old: 0 }
  const bedsOfTown: Record<string, number> = {}
  const bedsOfSupply: Record<string, number> = {}
  const lines: string[][] = []
  const houses: House[] = []

  const written = (year: number): string => {
    const [month, day] = [within(1, 12), within(13, 28)]
    const name = MONTHS[month - 1] ?? ''
    const two = (figure: number) => String(figure).padStart(2, '0')
    return of([
      ...[String(year), `${name} ${year}`, `${name.slice(0, 3)} ${year}`, `${month}/${day}/${year}`, `${day} ${name} ${year}`],
      ...[`${year}-${two(month)}-${two(day)}`, `ca. ${year}`, `spring ${year}`, `${two(month)}/${year}`],
    ])
  }
  const anyCase = (text: string) => of([text, text, text.toUpperCase(), text.toLowerCase(), ` ${text} `])
  const number = (index: number, exchange: string) => `815 ${exchange} ${String(index).padStart(4, '0')}`
  const asPhone = (plain: string) => {
    const [area = '', exchange = '', line = ''] = plain.split(' ')
    return of([
      ...[`(${area}) ${exchange}-${line}`, `${area}.${exchange}.${line}`, `${area}-${exchange}-${line}`, `+1 ${area} ${exchange} ${line}`],
      ...[`${area}${exchange}${line}`, `${area} ${exchange} ${line} (home)`],
    ])
  }
  const nameCell = ([first, last]: [string, string]) =>
    of([`${first} ${last}`, `${first} ${last}`, `${last}, ${first}`, `Mr. ${first} ${last}`])
  const put = (cells: string[]) => lines.push(cells)
  const notACustomer = (cells: string[]) => {
    count.leftOut++
    put(HEADINGS.map((_, column) => cells[column] ?? ''))
  }

  /** One house more: a line, and what it comes to. */
  function house(): void {
    const index = houses.length
    const name: [string, string] = [of(FIRST), `${of(LAST)} ${String.fromCharCode(65 + (index % 26))}${'aeiou'[index % 5]}${index}`]
    const street = `${within(1, 980)} ${of(STREETS)} ${of(['Road', 'Lane', 'Street'])}`
    const [town, supply] = [of(TOWNS), of(SUPPLIES)]
    const isTwin = chance() < 0.06
    const isOld = index % 60 === 7
    const year = isOld ? within(thisYear - 31, thisYear - 23) : within(thisYear - 17, thisYear - 3)
    const unread = chance() < 0.02 ? of(['date', 'tank', 'hardness', 'email', 'phone'] as const) : null
    const isUndated = unread === 'date' || (!isOld && chance() < 0.05)
    // A rebed that stands in the remarks is the bed of today; a quote for one is not.
    const rebed = !isUndated && chance() < 0.08 ? within(Math.max(year + 2, thisYear - 15), thisYear - 2) : null
    const isRebedded = rebed !== null && rebed > year + 1
    const decide = chance() < 0.01 ? of(DECIDE) : null
    const isSeen = chance() < 0.25
    const hasTwoNumbers = chance() < 0.1
    const [phone, second] = [number(index, '555'), number(index, '556')]
    const beds = isTwin ? 2 : 1
    const isCaller = caller.name === '' && index > 40 && !isTwin && unread === null && decide === null && hasTwoNumbers
    if (isCaller) Object.assign(caller, { name: name.join(' '), street, second })
    const remarks = [
      isRebedded ? of([`rebed ${rebed}`, `new resin ${rebed}`, `resin changed ${rebed}`]) : '',
      !isRebedded && chance() < 0.05 ? `quoted rebed ${thisYear - 1}, did not want it` : '',
      decide ?? '',
      chance() < 0.2 ? of(['dog in the yard', 'key under mat', 'salt by us', 'gate code 4411']) : '',
    ]
    const cells = [
      ...[`R${within(1, 9)}`, nameCell(name), street, anyCase(town)],
      unread === 'phone'
        ? '8.15556E+09'
        : hasTwoNumbers && isCaller
          ? `${asPhone(phone).replace(' (home)', '')} / ${second}`
          : asPhone(phone),
      hasTwoNumbers && !isCaller ? asPhone(second) : '',
      unread === 'email' ? UNREAD.email : chance() < 0.4 ? `house${index}@mail.example` : of(['', '-', 'n/a']),
      unread === 'date' ? UNREAD.date : isUndated ? of(['', '??', 'unknown']) : written(year),
      unread === 'tank' ? UNREAD.tank : isTwin ? of(['twin 9x48', '2 x 10x54']) : of(ONE_TANK),
      unread === 'hardness' ? UNREAD.hardness : of(['18', '22', '310 ppm', '19 gpg', '', '25 gr']),
      supply === '' ? '' : anyCase(supply),
      isSeen ? of([String(thisYear - 1), `May ${thisYear - 1}`]) : '',
      remarks.filter(Boolean).join('; '),
    ]
    if (unread) count.leftEmpty++
    if (decide) count.decide++
    count.customers++
    count.sites++
    count.softeners++
    count.beds += beds
    if (!isSeen) count.unseen += beds
    if (isOld && !isRebedded && !isUndated) count.old += beds
    bedsOfTown[town] = (bedsOfTown[town] ?? 0) + beds
    if (supply) bedsOfSupply[supply] = (bedsOfSupply[supply] ?? 0) + beds
    houses.push({ name, street, cells, isTwin })
    put(cells)
  }

  /** A house that stands there already: turned round, short, and with nothing new. */
  function again(): void {
    const { name, street, cells } = of(houses.filter((one) => one.cells[4] !== '8.15556E+09'))
    const short = street.replace(' Road', ' Rd').replace(' Lane', ' Ln').replace(' Street', ' St')
    const plain = (cells[4] ?? '').split('/')[0]?.replace(/\D/g, '').slice(-10) ?? ''
    const kept = [3, 8].map((column) => cells[column] ?? '')
    put(['R0', `${name[1]}, ${name[0]}`, short, kept[0] ?? '', plain, '', '', '', kept[1] ?? '', '', '', '', ''])
    // What cannot be read stays so.
    if (kept[1] === UNREAD.tank) count.leftEmpty++
  }

  while (lines.length < LINES) {
    const at = lines.length
    if (at % 250 === 0) notACustomer(['', `${of(['NORTH', 'SOUTH', 'RIVER'])} ROUTE ${1 + at / 250}`])
    else if (at % 250 === 249) notACustomer(['', 'TOTAL', '', '', '', '', '', '', '', String(within(200, 249))])
    else if (at === 1_001 || at === 2_001) notACustomer(HEADINGS)
    else if (at % 400 === 123) notACustomer(['R1', '', `${within(1, 99)} Nobody Lane`, 'Lowmoor'])
    else if (at % 60 === 33) again()
    else house()
  }
  const cell = (text: string) => (/[;"\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)
  const above = [['CUSTOMER BOOK, all routes'], [`printed for the office, ${thisYear}`], []]
  const text = [...above, HEADINGS, ...lines].map((cells) => cells.map(cell).join(';')).join('\r\n')
  // Every letter of it is in Windows-1252 as in Latin-1.
  return { bytes: Buffer.from(text, 'latin1'), lines: lines.length, ...count, bedsOfTown, bedsOfSupply, caller }
}
