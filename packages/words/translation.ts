/** The same messages in another language: each key, no key more. A missing or left-over one does not compile. */
export type Translation<Messages> = { readonly [Key in keyof Messages]: string }
