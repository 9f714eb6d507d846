import { type Micrograms, massUnits } from '../trade/mass'
import type { App } from './app'

/** Goes to Start with this size and revision; what was half-chosen there for the formula stays as it was. */
export async function startWithSize(
  app: Pick<App, 'drafts' | 'go'>,
  { formula, revision, sizeUg }: { readonly formula: string; readonly revision: number; readonly sizeUg: Micrograms },
): Promise<void> {
  const key = `start:${formula}`
  const unit = sizeUg >= massUnits.kg ? 'kg' : 'g'
  const size = String(Number((sizeUg / massUnits[unit]).toPrecision(12)))
  await app.drafts.write(key, JSON.stringify({ ...half(await app.drafts.read(key)), size, unit, revision }))
  app.go({ place: 'start', formula })
}

function half(draft: string | null): object {
  try {
    const read: unknown = draft === null ? {} : JSON.parse(draft)
    return typeof read === 'object' && read !== null ? read : {}
  } catch {
    return {}
  }
}
