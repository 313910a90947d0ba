/** A file of the web app that asks for numbers: how many fields it writes out, the journey that types the texts of typed-texts.ts into them, and by which labels. */
export type TypedForm = { fields: number; spec: string; labels: readonly string[] }

const form = (fields: number, spec: string, ...labels: string[]): TypedForm => ({ fields, spec, labels })

/** Every form with a number. A new field that no journey drives is missed by tests/tooling/typed-forms.test.ts. */
export const TYPED_FORMS: Readonly<Record<string, TypedForm>> = {
  'client/agreements/price-line.tsx': form(1, 'rounds', 'Price'),
  'client/softener-fields.tsx': form(1, 'typed-sites', 'Resin volume'),
  'features/bed/edit-facts.tsx': form(1, 'typed-sites', 'Resin volume', 'Gravel', 'Distributor tube, length', 'Backwash rate'),
  'features/bed/inspect-bed.tsx': form(
    3,
    'typed-sites',
    ...['Capacity, share of a new bed', 'Moisture of the beads', 'Pressure drop in service'],
  ),
  'features/crews/break-fields.tsx': form(1, 'typed-office', 'Length'),
  'features/crews/edit-person.tsx': form(1, 'typed-office', 'Overtime, if different from the company’s'),
  'features/crews/edit-vehicle.tsx': form(2, 'typed-office', 'Room for material', 'Payload for material'),
  'features/firm/figure-field.tsx': form(2, 'typed-figures'),
  'features/job/add-material.tsx': form(1, 'materials', 'How much'),
  'features/job/take-back-material.tsx': form(1, 'materials', 'How much came back'),
  'features/policy/policy-costs.tsx': form(1, 'typed-office', 'A planned rebed', 'Failures with beads in the plumbing'),
  'features/rebed-choice/owner-part.tsx': form(1, 'typed-sites', 'Water pressure'),
  'features/rebed-choice/rebed-choice.tsx': form(1, 'typed-sites', 'A planned rebed with 8% costs'),
  'features/rebed-choice/way-part.tsx': form(2, 'typed-sites', 'A cleaning costs', 'A new unit, installed, costs'),
  'features/settings-card/card-inputs.tsx': form(5, 'typed-visits', 'Hardness, raw', 'Warmest water', 'Kitchen sink'),
  'features/settings-card/value-field.tsx': form(1, 'typed-visits', 'Hardness, raw'),
  'features/site/edit-softener.tsx': form(1, 'typed-sites', 'People served'),
  'features/stores/item-form.tsx': form(
    5,
    'typed-office',
    ...['One bag holds', 'Outside diameter', 'On hand now', 'Price', 'Days from the order to the shelf'],
  ),
  'features/stores/change-stock.tsx': form(1, 'typed-office', 'Counted on the shelf', 'Received'),
  'features/visit/bed-fields.tsx': form(1, 'technician-close-out', 'Gravel', 'Distributor tube, cut to'),
  'features/visit/found-size.tsx': form(1, 'technician-stop', 'Tank height found, without the valve'),
  'features/visit/parts-used.tsx': form(1, 'technician-close-out', 'Take out'),
  'features/visit/step-ask.tsx': form(1, 'typed-visits', 'Raw water hardness'),
  'features/water/add-period.tsx': form(1, 'typed-sites', 'Residual as Cl₂', 'Hardness as CaCO₃', 'Iron'),
  'features/water/record-test.tsx': form(
    6,
    'typed-sites',
    ...['Hardness as CaCO₃', 'Free chlorine', 'Total chlorine', 'Iron', 'Manganese', 'pH'],
  ),
  'features/whats-wrong/check-card.tsx': form(1, 'typed-visits', 'At the valve outlet'),
  'features/which-tank/clue-fields.tsx': form(1, 'typed-visits', 'Floor to the rim, without the valve'),
}

/** What the forms of a company's figures ask for that is no number. */
export const FIGURE_TEXTS = [
  ...['What you call it', 'Words on its label', 'It regenerates by', 'meter', 'timer', 'Tube height at the opening', 'O-rings and seals'],
  ...['Counted as', 'days of use', '% of the capacity'],
] as const
