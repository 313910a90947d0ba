/** The address that calls a number, however it is written. */
export const telOf = (phone: string): string => `tel:${phone.replace(/[^\d+]/g, '')}`

/** A telephone number as written; a press calls it. */
export function PhoneLink({ phone }: { phone: string }) {
  return (
    <a className="whitespace-nowrap underline decoration-edge underline-offset-4" href={telOf(phone)}>
      {phone}
    </a>
  )
}
