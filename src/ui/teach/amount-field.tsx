import { createUniqueId, type JSX } from 'solid-js';
import { teachScreen } from '../../words/teach-screen.ts';

/** A number with its unit, changed in steps by large keys or typed. */
export function AmountField(props: {
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  readonly step: number;
  readonly onChange: (value: number) => void;
}): JSX.Element {
  const id = createUniqueId();
  return (
    <div class="amount">
      <label for={id}>{teachScreen.inUnit(props.label, props.unit)}</label>
      <div class="stepper">
        <button
          type="button"
          aria-label={teachScreen.less(props.label)}
          onClick={() => props.onChange(props.value - props.step)}
        >
          −
        </button>
        <input
          id={id}
          inputmode="numeric"
          value={props.value}
          onChange={(event) => props.onChange(Number(event.currentTarget.value))}
        />
        <button
          type="button"
          aria-label={teachScreen.more(props.label)}
          onClick={() => props.onChange(props.value + props.step)}
        >
          +
        </button>
      </div>
    </div>
  );
}
