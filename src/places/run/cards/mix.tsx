import './mix.css'
import { toolSetting } from '../../../app/tools'
import type { KindOf } from '../../../batch/step'
import { askOf } from '../../../batch/wording'
import { Button } from '../../../parts/button'
import { tipSpeed } from '../../../trade/mixing'
import { TypedField } from '../typed-field'
import { TimedCard } from './timed'
import { errorOf, useStep, valueOr } from './use-step'

/** Stirring or homogenising: the tool, its speed and size, how fast its edge moves, and for how long. */
export function MixCard({ step }: { step: KindOf<'mix'> }) {
  const tools = useStep(step)
  const { run, state, format } = tools
  const speed = tools.number('rpm')
  const across = tools.number('across')
  const key = toolSetting(step.tool)
  const knownMm = run.app.settings.value.value[key]
  const rpm = valueOr(speed, Number.NaN)
  const toolMm = across.kind === 'number' ? across.value : knownMm
  const fits = toolMm !== undefined && toolMm >= 2 && toolMm <= 500
  const typedMm = across.kind === 'number' && fits ? across.value : undefined
  const range = step.rpm
  const outside = range !== undefined && (rpm < range.min || rpm > range.max)
  /** Typed once for each tool: the next batch knows it. */
  const keep = () => {
    if (typedMm !== undefined && typedMm !== knownMm) void run.app.settings.change({ [key]: typedMm })
  }
  return (
    <TimedCard
      step={step}
      minutes={step.minutes}
      under={askOf(step, state.header)}
      doing="Mixing"
      sees={['even', 'a little foam', 'lumps', 'separating']}
      why={step.noVortex ? 'Slow enough that no vortex is drawn: a vortex takes in air.' : undefined}
      pad
      more={{
        ...(speed.kind === 'number' ? { toolRpm: speed.value } : {}),
        ...(toolMm === undefined ? {} : { toolMm }),
      }}
      onFinish={keep}
      bad={speed.kind === 'bad' || across.kind === 'bad'}
      fields={
        <>
          <div class="process-fields">
            <TypedField
              name="rpm"
              label="Speed as set"
              unit="rpm"
              placeholder={range === undefined ? '' : `${format.number(range.min)}–${format.number(range.max)}`}
              error={errorOf(speed)}
              onEnter={() => {}}
            />
            <TypedField
              name="across"
              label={`${capital(step.tool)}, across`}
              unit="mm"
              placeholder={knownMm === undefined ? '' : format.number(knownMm)}
              error={errorOf(across)}
              onEnter={() => {}}
            />
          </div>
          {outside && range && (
            <p class="process-note">
              The formula says {format.number(range.min)}–{format.number(range.max)} rpm. Check the display.
            </p>
          )}
        </>
      }
      below={
        <div class="process-tip">
          <p class="process-fact">{tipWords(rpm, fits ? toolMm : undefined, format.number)}</p>
          <Button
            kind="plain"
            icon="info"
            label="When scaling up"
            onPress={() => {
              run.sheet.value = { name: 'scale-up' }
            }}
          />
        </div>
      }
    />
  )
}

function tipWords(
  rpm: number,
  toolMm: number | undefined,
  number: (value: number, decimals?: number) => string,
): string {
  if (toolMm === undefined) return 'With speed and width: the tip speed'
  if (Number.isNaN(rpm)) return `${number(toolMm)} mm across: the speed gives the tip speed`
  return `Tip speed ${number(tipSpeed(rpm, toolMm), 2)} m/s (π·d·n)`
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
