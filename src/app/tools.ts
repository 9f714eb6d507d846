import type { Settings } from './app'

/** A tool's diameter is kept once for the house, among the preferences; batches write down what they used. */
type ToolSetting = `tool:${string}`

export const toolSetting = (tool: string): ToolSetting => `tool:${tool.trim().toLowerCase()}`

export interface ToolSize {
  readonly tool: string
  readonly diameterMm: number
}

/** Tools with their diameters in mm, by name. */
export const toolsIn = (settings: Settings): readonly ToolSize[] =>
  Object.entries(settings)
    .flatMap(([key, value]) =>
      key.startsWith('tool:') && typeof value === 'number' ? [{ tool: key.slice(5), diameterMm: value }] : [],
    )
    .sort((a, b) => a.tool.localeCompare(b.tool))
