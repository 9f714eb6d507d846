import type { FileContent, Saved, Share, ShareRefusal } from '../../ports/share'
import { accept, type Result, refuse } from '../../trade/result'

/** How long a download may take to fetch its bytes from the page. */
const keepUrlMs = 60_000

export const webShare = (): Share => ({
  saveFile: async (name, mime, content) => {
    try {
      const blob = await blobOf(content, mime)
      return downloadsTrapTheApp() ? await shareFile(new File([blob], name, { type: mime })) : download(name, blob)
    } catch {
      return refuse({ code: 'SHARE_FAILED' })
    }
  },
})

const blobOf = async (content: FileContent, mime: string): Promise<Blob> => {
  if (content instanceof Blob) return content
  if (content instanceof Uint8Array) return new Blob([content], { type: mime })
  return new Blob([await new Response(content).blob()], { type: mime })
}

/** On iOS a home-screen app that downloads shows the file over itself, with no way back. Only there is `standalone` set. */
const downloadsTrapTheApp = (): boolean => 'standalone' in navigator && navigator.standalone === true

const shareFile = async (file: File): Promise<Result<Saved, ShareRefusal>> => {
  if (navigator.canShare?.({ files: [file] }) !== true) return refuse({ code: 'SHARE_FAILED' })
  try {
    await navigator.share({ files: [file] })
    return accept('shared')
  } catch (error) {
    const name = error instanceof DOMException ? error.name : ''
    if (name === 'AbortError') return accept('dismissed')
    return refuse({ code: name === 'NotAllowedError' ? 'SHARE_NEEDS_TAP' : 'SHARE_FAILED' })
  }
}

const download = (name: string, blob: Blob): Result<Saved, ShareRefusal> => {
  const url = URL.createObjectURL(blob)
  const link = document.createElement('a')
  link.href = url
  link.download = name
  document.body.append(link)
  link.click()
  link.remove()
  setTimeout(() => URL.revokeObjectURL(url), keepUrlMs)
  return accept('downloading')
}
