import { Label, Radio, RadioGroup } from 'react-aria-components'
import type { Scope } from '../../../core/project/survey-records.ts'
import type { ScopeLevel } from './scope-choices.ts'

interface ScopeBarProps {
  readonly label: string
  readonly scopes: readonly Scope[]
  readonly wordsOf: (scope: Scope) => string
  /** Levels at which somebody made a choice of their own. */
  readonly ownLevels: ReadonlySet<ScopeLevel>
  readonly level: ScopeLevel
  readonly onLevel: (level: ScopeLevel) => void
}

/** Says what the fields below apply to, and at which levels a choice was made; the narrowest one holds. */
export function ScopeBar({ label, scopes, wordsOf, ownLevels, level, onLevel }: ScopeBarProps) {
  return (
    <RadioGroup
      className="scopes"
      value={level}
      onChange={(value) => {
        const scope = scopes.find((each) => each.level === value)
        if (scope !== undefined) onLevel(scope.level)
      }}
    >
      <Label>{label}</Label>
      <div className="scopes-row">
        {scopes.map((scope) => (
          <Radio key={scope.level} value={scope.level} className="scope">
            <span>{wordsOf(scope)}</span>
            <span className="scope-own">{ownLevels.has(scope.level) ? 'set here' : 'inherited'}</span>
          </Radio>
        ))}
      </div>
    </RadioGroup>
  )
}
