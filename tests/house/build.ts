/** One production build for all that tests it: made only where the sources have changed since. */
import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { buildId } from './sources.ts'

export const provideBuild = (): void => {
  if (builtId() === buildId()) return
  execFileSync('npx', ['vite', 'build'], { stdio: 'inherit' })
}

const builtId = (): string | undefined => {
  if (!existsSync('dist/build.json')) return undefined
  return (JSON.parse(readFileSync('dist/build.json', 'utf8')) as { id?: string }).id
}
