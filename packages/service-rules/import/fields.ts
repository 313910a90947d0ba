/** Everything a column of a firm's file can fill. */
export type ImportField =
  | 'referenceNumber'
  | 'customerName'
  | 'contactName'
  | 'phone'
  | 'otherPhone'
  | 'email'
  | 'street'
  | 'town'
  | 'postcode'
  | 'region'
  | 'latitude'
  | 'longitude'
  | 'accessNotes'
  | 'softenerLabel'
  | 'tankPosition'
  | 'tank'
  | 'tankCount'
  | 'resinVolume'
  | 'resinKind'
  | 'installed'
  | 'bedBegan'
  | 'lastSeen'
  | 'supplyName'
  | 'disinfectant'
  | 'hardness'
  | 'iron'
  | 'chlorine'
  | 'notes'
  | 'consent'
  | 'mayEmail'
  | 'mayPhone'
  | 'mayWrite'

export interface FieldDescription {
  field: ImportField
  /** What the screen calls it. */
  title: string
  /** What may be written there, in one line. */
  accepts: string
  /** Text put between the parts when several columns fill this field; null where only one column may. */
  joinWith: string | null
}

/** The fields in the order in which a screen lists them. */
export const importFields: readonly FieldDescription[] = [
  { field: 'referenceNumber', title: 'Your customer number', accepts: 'any text that stays the same', joinWith: null },
  { field: 'customerName', title: 'Customer name', accepts: 'a person or company; first and last name may be two columns', joinWith: ' ' },
  { field: 'contactName', title: 'Contact name', accepts: 'who to ask for', joinWith: ' ' },
  { field: 'phone', title: 'Phone', accepts: '7 to 15 digits', joinWith: null },
  { field: 'otherPhone', title: 'More phones', accepts: '7 to 15 digits; several columns are kept', joinWith: '; ' },
  { field: 'email', title: 'Email', accepts: 'one address', joinWith: null },
  { field: 'street', title: 'Street and number', accepts: 'any text; several columns are joined', joinWith: ', ' },
  { field: 'town', title: 'Town', accepts: 'any text', joinWith: null },
  { field: 'postcode', title: 'Postcode', accepts: 'any text', joinWith: null },
  { field: 'region', title: 'State or region', accepts: 'any text', joinWith: null },
  { field: 'latitude', title: 'Latitude', accepts: 'degrees north, as 41.8781', joinWith: null },
  { field: 'longitude', title: 'Longitude', accepts: 'degrees east, as -87.6298', joinWith: null },
  { field: 'accessNotes', title: 'Access notes', accepts: 'gate code, dog, where the key is', joinWith: '; ' },
  { field: 'softenerLabel', title: 'Softener label or model', accepts: 'any text', joinWith: ' ' },
  { field: 'tankPosition', title: 'Tank position', accepts: 'left, right, A, B, basement', joinWith: null },
  { field: 'tank', title: 'Tank', accepts: '10x54, 48,000 grain, 1.5 cu ft, 42 L, twin 14x65', joinWith: null },
  { field: 'tankCount', title: 'Number of tanks', accepts: '1 to 8', joinWith: null },
  { field: 'resinVolume', title: 'Resin volume', accepts: '1.5 cu ft or 42 L', joinWith: null },
  { field: 'resinKind', title: 'Resin kind', accepts: '8%, 10% or fine mesh', joinWith: null },
  { field: 'installed', title: 'Softener installed', accepts: '14 May 2009, 2009, before 2015, ca. 2012', joinWith: null },
  { field: 'bedBegan', title: 'Resin last replaced', accepts: '14 May 2018, 2018, before 2015', joinWith: null },
  { field: 'lastSeen', title: 'Last seen', accepts: 'the last visit: a date, a month or a year', joinWith: null },
  { field: 'supplyName', title: 'Water supply', accepts: 'the name of the town supply, or well', joinWith: null },
  { field: 'disinfectant', title: 'Disinfectant', accepts: 'chlorine, chloramine or none', joinWith: null },
  { field: 'hardness', title: 'Hardness', accepts: '18 gpg, 310 mg/L, 17 °dH', joinWith: null },
  { field: 'iron', title: 'Iron', accepts: '0.3 mg/L, 300 µg/L, trace', joinWith: null },
  { field: 'chlorine', title: 'Chlorine', accepts: '0.8 mg/L, <0.1, none', joinWith: null },
  { field: 'notes', title: 'Notes', accepts: 'any text; "rebed 2016" is found in it', joinWith: '; ' },
  { field: 'consent', title: 'May we contact them', accepts: 'yes, no, email only, phone and letter', joinWith: null },
  { field: 'mayEmail', title: 'May we email', accepts: 'yes or no', joinWith: null },
  { field: 'mayPhone', title: 'May we phone', accepts: 'yes or no', joinWith: null },
  { field: 'mayWrite', title: 'May we write a letter', accepts: 'yes or no', joinWith: null },
]

const byField = new Map(importFields.map((description) => [description.field, description]))

/** The description of one field. */
export function describeField(field: ImportField): FieldDescription {
  const description = byField.get(field)
  if (!description) throw new RangeError(`There is no import field called ${field}.`)
  return description
}
