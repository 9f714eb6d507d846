/** Serves the production build as a plain static host would: `_headers` applied, what is missing answered with 404. */
import { createReadStream, existsSync, readFileSync, statSync } from 'node:fs'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import { extname, join, normalize } from 'node:path'
import { pathToFileURL } from 'node:url'
import { headersFor, parseHeaders } from './headers.ts'

/** Listens on this machine only. Port 0 takes a free one. */
export const serveFolder = async (folder: string, port: number): Promise<{ server: Server; origin: string }> => {
  const headersFile = join(folder, '_headers')
  const rules = existsSync(headersFile) ? parseHeaders(readFileSync(headersFile, 'utf8')) : []
  const server = createServer((request, response) => {
    const path = pathOf(request)
    for (const { name, value } of headersFor(rules, path ?? '/')) response.setHeader(name, value)
    answer(folder, path, request, response)
  })
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen(port, '127.0.0.1', resolve)
  })
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('The server has no port.')
  return { server, origin: `http://127.0.0.1:${address.port}` }
}

const types: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.ndjson': 'application/x-ndjson',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.wav': 'audio/wav',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
}

const pathOf = (request: IncomingMessage): string | undefined => {
  try {
    return decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname)
  } catch {
    return undefined
  }
}

const answer = (folder: string, path: string | undefined, request: IncomingMessage, response: ServerResponse): void => {
  const readOnly = request.method === 'GET' || request.method === 'HEAD'
  const file = path === undefined ? undefined : fileFor(folder, path)
  if (!readOnly) refuse(response, 405, 'Only reading is served here.')
  else if (file === undefined) refuse(response, 404, 'There is no such file.')
  else send(file, request.method === 'HEAD', response)
}

const send = (file: string, headOnly: boolean, response: ServerResponse): void => {
  response.setHeader('Content-Type', types[extname(file)] ?? 'application/octet-stream')
  response.setHeader('Content-Length', statSync(file).size)
  if (headOnly) response.end()
  else createReadStream(file).pipe(response)
}

const refuse = (response: ServerResponse, status: number, sentence: string): void => {
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8' }).end(sentence)
}

const fileFor = (folder: string, path: string): string | undefined => {
  const inside = normalize(path.endsWith('/') ? `${path}index.html` : path)
  if (inside.split('/').some((part) => part.startsWith('.') || part === '_headers')) return undefined
  const file = join(folder, inside)
  return existsSync(file) && statSync(file).isFile() ? file : undefined
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { origin } = await serveFolder('dist', Number(process.env.PORT ?? 4173))
  console.log(`Pannikin is at ${origin}/`)
}
