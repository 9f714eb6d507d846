import type { Event } from '../batch/event'

/** What one page tells the others of this origin, after it is durable. */
type Message =
  | { readonly kind: 'appended'; readonly events: readonly Event[] }
  | { readonly kind: 'draft'; readonly key: string; readonly text: string | null }

export interface Pages {
  tell(message: Message): void
  onMessage(listener: (message: Message) => void): void
}

/** The other pages, reached by a broadcast channel; nobody where there is none. */
export function otherPages(): Pages {
  if (typeof BroadcastChannel === 'undefined') return { tell: () => undefined, onMessage: () => undefined }
  const channel = new BroadcastChannel('pannikin')
  return {
    tell: (message) => channel.postMessage(message),
    onMessage: (listener) => channel.addEventListener('message', ({ data }: MessageEvent<Message>) => listener(data)),
  }
}
