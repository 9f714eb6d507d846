import './settle-panel.css'
import { useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { currencyText } from '../../app/currency'
import { useFormat } from '../../app/format'
import type { PremixRecipe } from '../../batch/premix-recipe'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { Row } from '../../parts/choice'
import { costOf } from './costs'
import { KeepSheet } from './keep-sheet'
import { notesOf } from './notes'
import { PremixSheet } from './premix-sheet'
import { checksDone, wearOf } from './ready'
import type { StartProps, StartSheet } from './shared'
import type { SettleCard, Way } from './ways'

interface SettlePanelProps extends StartProps {
  onSheet: (sheet: StartSheet) => void
}

/** What to settle, numbered as in the table, and what else is worth a look before the first weighing. */
export const SettlePanel = ({ model, setUp, house, onSheet }: SettlePanelProps) => {
  const [keeping, setKeeping] = useState<SettleCard | null>(null)
  const [mixes, setMixes] = useState<readonly PremixRecipe[] | null>(null)
  const format = useFormat()
  const { currency } = useApp().settings.value.value
  const cards = model.cards.value
  const wear = wearOf(setUp)
  const { done, of } = checksDone(model.choice.value, setUp, house)
  const cost = costOf(setUp)
  return (
    <section class="settle" aria-label="Before the batch">
      {cards.map((card, index) => (
        <SettleOne
          key={card.id}
          card={card}
          number={index + 1}
          onTake={(way) => (way.mixes ? setMixes(way.mixes) : model.change(way.take))}
          onKeep={() => setKeeping(card)}
        />
      ))}
      {notesOf(setUp).map((note) => (
        <p key={note} class="settle-note">
          {note}
        </p>
      ))}
      <Row
        icon="clipboard-check"
        label="Checks before the batch"
        sub={`${done} of ${of} done: list, balances, bell`}
        onPress={() => onSheet('checks')}
      />
      {wear.length > 0 && <Row icon="glasses" label="Wear" sub={wear.join(', ')} onPress={() => onSheet('stock')} />}
      <Row
        icon="package"
        label="Stock, cost, hazards"
        sub={cost === null ? 'no prices known' : `${currencyText(cost, currency, format)} of materials`}
        onPress={() => onSheet('stock')}
      />
      {mixes && (
        <PremixSheet model={model} setUp={setUp} house={house} recipes={mixes} onClose={() => setMixes(null)} />
      )}
      {keeping && (
        <KeepSheet
          card={keeping}
          onKeep={(take) => {
            model.change(take)
            setKeeping(null)
          }}
          onClose={() => setKeeping(null)}
        />
      )}
    </section>
  )
}

interface SettleOneProps {
  card: SettleCard
  number: number
  onTake: (way: Way) => void
  onKeep: () => void
}

const SettleOne = ({ card, number, onTake, onKeep }: SettleOneProps) => {
  const lead = number === 1
  const heading = `settle-${number}`
  const pair = card.ways.length <= 1 && card.ways.every(({ sub }) => sub === undefined)
  return (
    <Card lip={lead ? 'action' : 'none'} labelledBy={heading} class="settle-card">
      <h2 class="settle-title" id={heading}>
        <span class="settle-number">{number}</span> {card.title}
      </h2>
      <p class="settle-text">{unbroken(card.text)}</p>
      <div class={pair ? 'settle-pair' : 'settle-ways'}>
        {card.ways.map((way, index) =>
          way.sub === undefined ? (
            <Button
              key={way.label}
              kind={lead && index === 0 ? 'filled' : 'quiet'}
              label={way.label}
              onPress={() => onTake(way)}
              class="settle-first"
            />
          ) : (
            <button key={way.label} type="button" class="settle-way" onClick={() => onTake(way)}>
              <strong>{way.label}</strong>
              <span>{way.sub}</span>
            </button>
          ),
        )}
        <Button label="Keep it, say why" onPress={onKeep} size="small" name={`Keep it, say why: ${card.title}`} />
      </div>
    </Card>
  )
}

/** A figure and its unit stay on one line. */
const unbroken = (text: string): string => text.replace(/(\d) (g|kg|%|days?)\b/g, '$1\u00a0$2')
