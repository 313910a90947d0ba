declare module 'hoodiecrow-imap' {
  import type { Server } from 'node:net'

  type Message = { raw: string; internaldate?: string; flags: string[] }
  type Options = { storage: Record<string, { messages: Omit<Message, 'flags'>[] }> }
  export default function hoodiecrow(options: Options): { server: Server; folderCache: Record<string, { messages: Message[] }> }
}
