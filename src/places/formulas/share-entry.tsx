import './share-entry.css'
import { useComputed } from '@preact/signals'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { showNumber } from '../../app/forms/show-fields'
import type { DraftItem } from './draft'
import type { EditorModel } from './editor-model'
import { rowKeyOf } from './line-fields'
import { readShare, showShare, sumIn } from './share-text'
import { shareOf } from './total'

/** The share of a line, typed right in its row; of the q.s. line what is left for it. */
export function ShareEntry({ editor, line, name }: { editor: EditorModel; line: DraftItem; name: string }) {
  const mark = useApp().settings.decimalMark.value
  const key = rowKeyOf(line.values['amount.kind'])
  const unit = editor.unit.value
  const wrong = useComputed(() => key !== null && editor.fieldErrors.value[line.id]?.[key] !== undefined).value
  if (key === null) return <QsShare editor={editor} />
  const text = line.values[key] ?? ''
  const world = editor.world.value
  const sum = sumIn(text)
  const worth = sum === null ? undefined : world.sums.get(sum)
  return (
    <span class={wrong ? 'share share-wrong' : 'share'}>
      {worth !== undefined && <span class="share-sum">= {showNumber(worth, mark)}</span>}
      <input
        class="share-input"
        id={`share-${line.id}`}
        type="text"
        inputMode="text"
        enterKeyHint="next"
        autoComplete="off"
        spellcheck={false}
        aria-label={`Share of the batch: ${name}, ${unit}`}
        aria-invalid={wrong ? true : undefined}
        aria-describedby={wrong ? `error-${line.id}` : undefined}
        value={asTyped(text, unit, (share) => showShare(share, unit, world.sizeUg, mark), world)}
        onInput={(event) => editor.set(line.id, key, toKeep(event.currentTarget.value, unit))}
        onBlur={() => void editor.settle()}
        onKeyDown={(event) => {
          if (event.key !== 'Enter' && event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return
          event.preventDefault()
          toNeighbour(event.currentTarget, event.key === 'ArrowUp' ? -1 : 1)
        }}
      />
      <span class="share-unit" aria-hidden="true">
        {unit}
      </span>
    </span>
  )
}

function QsShare({ editor }: { editor: EditorModel }) {
  const format = useFormat()
  const unit = editor.unit.value
  const qs = editor.total.value.qs ?? 0
  const { sizeUg } = editor.world.value
  return (
    <span class="share">
      <span class="share-worked-out">
        {unit === 'g' && sizeUg !== null ? format.mass(qs * sizeUg) : format.number(qs * 100, 3)}
      </span>
      <span class="share-unit">{unit}</span>
    </span>
  )
}

/** The same share in the other unit, for the quiet line of a row: "15.00 g" beside 3 %. */
export function OtherUnit({ editor, line }: { editor: EditorModel; line: DraftItem }) {
  const format = useFormat()
  const isQs = line.values['amount.kind'] === 'qs'
  // Only the q.s. line changes with the others.
  const share = isQs ? editor.total.value.qs : shareOf(line.values, editor.world.value)
  const { sizeUg } = editor.world.value
  if (share === null) return null
  if (editor.unit.value === 'g') return <>{format.percent(share, 3)}</>
  return <>{sizeUg !== null && format.massWithUnit(share * sizeUg)}</>
}

/** In g a bare number is a mass: it is kept with its unit, so that it says the same when it is read alone. */
const toKeep = (typed: string, unit: '%' | 'g'): string =>
  unit === 'g' && /[\d)]\s*$/.test(typed) ? `${typed} g` : typed

function asTyped(
  text: string,
  unit: '%' | 'g',
  show: (share: number) => string,
  world: Parameters<typeof readShare>[1],
): string {
  if (unit === '%') return text
  if (/ g$/.test(text)) return text.slice(0, -2)
  if (sumIn(text) !== null) return text
  const read = readShare(text, world)
  return read.ok ? show(read.value) : text
}

/** The next share of the same formula, whatever phase it is in. */
function toNeighbour(from: HTMLInputElement, by: -1 | 1): void {
  const all = [...document.querySelectorAll<HTMLInputElement>('.share-input')]
  const next = all[all.indexOf(from) + by]
  next?.focus()
  next?.select()
}
