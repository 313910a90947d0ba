/** What a photograph of a visit shows: the label of tank or valve, the place as it was found, the bed that came out, the place as it was left. */
export const photographKinds = ['label', 'as-found', 'old-bed', 'as-left'] as const
export type PhotographKind = (typeof photographKinds)[number]

/** Every picture of a visit: its photographs, and what the customer drew to sign. */
export const visitPictureKinds = [...photographKinds, 'signature'] as const

/** What an owner photographs by their link: label, control head, bypass, the cap taken out of the tube. */
export const guidePhotographKinds = ['label', 'valve', 'bypass', 'cap'] as const
export type GuidePhotographKind = (typeof guidePhotographKinds)[number]

export const guidePhotographWords: Readonly<Record<GuidePhotographKind, string>> = {
  label: 'Label',
  valve: 'Valve',
  bypass: 'Bypass',
  cap: 'Cap taken out',
}

/** Every picture there is. */
export const pictureKinds = [...visitPictureKinds, 'valve', 'bypass', 'cap'] as const

/** How far a picture is: still being sent, kept, to be taken away since somebody was erased, or taken away. */
export const pictureStates = ['coming', 'stored', 'erased', 'gone'] as const
export type PictureState = (typeof pictureStates)[number]
