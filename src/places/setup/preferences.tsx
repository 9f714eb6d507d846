import { useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { Card } from '../../parts/card'
import { Choice } from '../../parts/choice'
import { TextField } from '../../parts/form'

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
    </Card>
  )
}

/** A text that is kept when it is left: each letter as an entry of its own would be a poor trail. */
function LateText({ name, label, hint }: { name: 'studio' | 'currency'; label: string; hint: string }) {
  const { settings } = useApp()
  const kept = settings.value.value[name]
  const [text, setText] = useState<string | null>(null)
  const keep = () => {
    if (text !== null && text !== kept) void settings.change({ [name]: text.trim().slice(0, 80) })
    setText(null)
  }
  return (
    <div onFocusOut={keep}>
      <TextField label={label} hint={hint} value={text ?? kept} onChange={setText} onEnter={keep} />
    </div>
  )
}
