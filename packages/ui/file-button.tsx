import type { ReactNode } from 'react'
import { buttonClass } from './button-class.ts'

export type FileButtonProps = {
  /** Kinds that the device offers, as 'image/*'. */
  accept: string
  /** On a device with cameras: the one that looks away from whoever holds it. */
  camera?: boolean
  onFile: (file: File) => void
  children: ReactNode
}

/** A button that asks for a file, or takes a picture where the device can. The same file can be chosen twice. */
export function FileButton({ accept, camera, onFile, children }: FileButtonProps) {
  return (
    <label
      className={`${buttonClass('line')} cursor-pointer has-focus-visible:outline-2 has-focus-visible:outline-offset-2 has-focus-visible:outline-ink`}
    >
      {children}
      <input
        type="file"
        accept={accept}
        capture={camera ? 'environment' : undefined}
        className="sr-only"
        onChange={(event) => {
          const [file] = event.target.files ?? []
          event.target.value = ''
          if (file) onFile(file)
        }}
      />
    </label>
  )
}
