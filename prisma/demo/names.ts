import type { Random } from './random.ts'

const GIVEN =
  'Ada Alba Anders Anselm Bea Bram Cecil Clem Dora Edda Elias Enid Esme Fergus Flora Gil Greta Hal Hester Ida Ivor Jonas Juno Kit Lena Lorne Mabel Milo Nell Nora Odell Olive Otto Pearl Perry Quill Rhoda Rufus Sable Selma Silas Tamsin Thea Ulla Verity Wilf Wren Yara Zeke Zora'.split(
    ' ',
  )
const FAMILY =
  'Abelard Ashcombe Barrow Bexley Birkett Calloway Carrick Coldwell Corben Dacre Denholm Drury Eastman Elsden Fairlie Fenwick Garland Gilroy Haddon Halloran Heath Ingram Jessop Kemble Kinsey Lockyer Loxley Marsden Merrow Naismith Norcott Oakden Orrin Paget Penrose Quayle Radley Redfern Sandal Selwyn Tarrant Thorne Underhill Vance Wardle Wexford Whitlow Yarrow Zeller Lindqvist Okoro Takeda Moreau Núñez Björk'.split(
    ' ',
  )
const STREETS =
  'Orchard Lane|Mill Weir Road|Kestrel Way|Alder Rise|Quarry Street|Ford House Lane|Tannery Row|Old Pump Road|Lime Kiln Lane|Cistern Street|Heron Court|Larch Avenue|Cooper Street|Saltern Road|Brook Street|Wellhead Drive|Chalk Hill|Furlong Lane|Meadow Bank|Granary Lane|Sluice Road|Copper Beech Drive|Harrow Street|Spring Gardens|Willow Bend|Cartwright Lane|Stonecutters Row|Foundry Road|Plover Lane|Upper Common'.split(
    '|',
  )
const BUSINESS = [
  'bakery',
  'laundry',
  'dairy',
  'guest house',
  'brewery',
  'café',
  'car wash',
  'nursing home',
  'greenhouse',
  'print works',
  'school kitchen',
  'dental practice',
]

export const personName = (random: Random) => `${random.pick(GIVEN)} ${random.pick(FAMILY)}`
export const streetOf = (random: Random) => random.pick(STREETS)

/** A business as the firm calls it, "Merrow bakery". */
export const businessName = (random: Random) => `${random.pick(FAMILY)} ${random.pick(BUSINESS)}`
export const ACCESS = [
  'basement, narrow stairs',
  'utility room, level',
  'garage, side door',
  'crawl space: call before coming',
  'parking at the back',
  'dog in the yard, call first',
  'key with the neighbor at number 12',
  'plant room, ask at the desk',
]
