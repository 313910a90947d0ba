/** What a photograph of a visit shows: the label of tank or valve, the place as it was found, the bed that came out, the place as it was left. */
export const photographKinds = ['label', 'as-found', 'old-bed', 'as-left'] as const
export type PhotographKind = (typeof photographKinds)[number]

/** Every picture of a visit: its photographs, and what the customer drew to sign. */
export const pictureKinds = [...photographKinds, 'signature'] as const
export type PictureKind = (typeof pictureKinds)[number]

/** How far a picture is: still being sent, kept, to be taken away since somebody was erased, or taken away. */
export const pictureStates = ['coming', 'stored', 'erased', 'gone'] as const
export type PictureState = (typeof pictureStates)[number]
