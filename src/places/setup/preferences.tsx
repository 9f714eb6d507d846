import { useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { type ToolSize, toolSetting, toolsIn } from '../../app/tools'
import { Card } from '../../parts/card'
import { Choice } from '../../parts/choice'
import { TextField } from '../../parts/form'
import { NumberField } from '../../parts/number-field'
import { readDecimal } from '../../trade/number-text'

/** How the app looks and writes on this tablet. Each choice counts at once. */
export function Preferences() {
  const { settings } = useApp()
  const { theme, hand, decimalMark } = settings.value.value
  return (
    <Card label="Preferences" class="setup-card">
      <Choice
        label="Theme"
        value={theme}
        options={[
          { value: 'system', label: 'as the tablet' },
          { value: 'light', label: 'light', icon: 'sun' },
          { value: 'dark', label: 'dark', icon: 'moon' },
        ]}
        onChange={(value) => void settings.change({ theme: value })}
      />
      <Choice
        label="Writing hand"
        value={hand}
        options={[
          { value: 'right', label: 'right', sub: 'pad and Record on the right' },
          { value: 'left', label: 'left', sub: 'pad and Record on the left' },
        ]}
        onChange={(value) => void settings.change({ hand: value })}
      />
      <Choice
        label="Decimal mark"
        value={decimalMark}
        options={[
          { value: 'locale', label: 'as the tablet', sub: 'both are always understood' },
          { value: '.', label: 'point', sub: '1.83' },
          { value: ',', label: 'comma', sub: '1,83' },
        ]}
        onChange={(value) => void settings.change({ decimalMark: value })}
      />
      <LateText name="studio" label="Studio" hint="at the head of every record" />
      <LateText name="currency" label="Currency" hint="before every cost" />
      <Tools />
    </Card>
  )
}

/** Stirring tools with how far they are across, as they were typed on their cards; put right here. */
function Tools() {
  const tools = toolsIn(useApp().settings.value.value)
  if (tools.length === 0) return null
  return (
    <>
      {tools.map(({ tool, diameterMm }) => (
        <ToolSizeField key={tool} tool={tool} diameterMm={diameterMm} />
      ))}
    </>
  )
}

function ToolSizeField({ tool, diameterMm }: ToolSize) {
  const { settings } = useApp()
  const format = useFormat()
  const [text, setText] = useState<string | null>(null)
  const read = readDecimal(text ?? '')
  const fits = read.ok && read.value >= 2 && read.value <= 500
  const keep = () => {
    if (!fits) return
    void settings.change({ [toolSetting(tool)]: read.value })
    setText(null)
  }
  const error = text === null || text === '' || fits ? undefined : 'Type millimetres, between 2 and 500.'
  return (
    <div onFocusOut={keep}>
      <NumberField
        label={`${tool}, across`}
        hint="for the tip speed"
        unit="mm"
        value={text ?? format.number(diameterMm)}
        error={error}
        onChange={setText}
        onEnter={keep}
      />
    </div>
  )
}

/** A text that is kept when it is left: each letter as an entry of its own would be a poor trail. */
function LateText({ name, label, hint }: { name: 'studio' | 'currency'; label: string; hint: string }) {
  const { settings } = useApp()
  const kept = settings.value.value[name]
  const [text, setText] = useState<string | null>(null)
  const keep = () => {
    const next = text?.trim().slice(0, 80)
    if (next !== undefined && next !== kept) {
      void settings.change(name === 'studio' ? { studio: next } : { currency: next })
    }
    setText(null)
  }
  return (
    <div onFocusOut={keep}>
      <TextField label={label} hint={hint} value={text ?? kept} onChange={setText} onEnter={keep} />
    </div>
  )
}
