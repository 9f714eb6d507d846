import type { Saved, Share, ShareRefusal } from '../../ports/share'
import { accept, type Result } from '../../trade/result'

export interface CollectingShare extends Share {
  /** Name, type and bytes of every file handed over. */
  readonly files: readonly { readonly name: string; readonly mime: string; readonly bytes: Uint8Array }[]
}

/** Keeps each file instead of handing it out, and gives the answer it was told to give. */
export const collectingShare = (
  answer: Result<Saved, ShareRefusal> = accept<Saved>('downloading'),
): CollectingShare => {
  const files: { name: string; mime: string; bytes: Uint8Array }[] = []
  return {
    files,
    saveFile: async (name, mime, content) => {
      if (answer.ok) files.push({ name, mime, bytes: new Uint8Array(await new Response(content).arrayBuffer()) })
      return answer
    },
  }
}
