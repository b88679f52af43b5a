import { For, Show, type JSX } from 'solid-js';
import { patternPlan } from '../../words/pattern-plan.ts';
import type { MapView, Standing } from '../view/map.ts';

/** The pattern with what its marks mean and how many there are of each, in words. */
export function PatternPlan(props: { readonly map: MapView }): JSX.Element {
  const count = (standing: Standing): number =>
    props.map.positions.filter((position) => position.standing === standing).length;
  return (
    <div class="plan">
      <PatternMap map={props.map} />
      {/* A screen reader has it from the name of the drawing, number by number. */}
      <ul class="legend" aria-hidden="true">
        <For each={LEGEND}>
          {({ standing, sign }) => (
            <li class={standing} classList={{ none: count(standing) === 0 }}>
              {sign} {patternPlan.standing[standing]} {count(standing)}
            </li>
          )}
        </For>
      </ul>
    </div>
  );
}

/** In the order of the work; each keeps its place whether there are any or not. */
const LEGEND: readonly { readonly standing: Standing; readonly sign: string }[] = [
  { standing: 'done', sign: '✓' },
  { standing: 'next', sign: '◎' },
  { standing: 'doubt', sign: '△' },
  { standing: 'open', sign: '○' },
];

/** The fasteners as they sit on the part. Standing is told by shape and text as well as by colour. */
export function PatternMap(props: {
  readonly map: MapView;
  /** Fastener numbers as they are worked: drawn as a line from one to the next. */
  readonly order?: readonly number[];
}): JSX.Element {
  const radius = () => Math.min(0.17, 1.6 / props.map.positions.length);
  return (
    <svg class="pattern-map" viewBox="-1.3 -1.3 2.6 2.6" role="img" aria-label={description(props.map)}>
      <Show when={props.order}>{(order) => <polyline class="order" points={pointsOf(props.map, order())} />}</Show>
      <For each={props.map.positions}>
        {(position) => (
          <g transform={`translate(${position.x} ${position.y})`} class={`fastener ${position.standing}`}>
            <Mark standing={position.standing} radius={radius()} />
            <text font-size={String(radius() * 1.15)} text-anchor="middle" dominant-baseline="central">
              {position.number}
            </text>
            <Show when={position.standing === 'done'}>
              <path class="tick" d={tick(radius())} />
            </Show>
          </g>
        )}
      </For>
    </svg>
  );
}

function Mark(props: { readonly standing: Standing; readonly radius: number }): JSX.Element {
  return (
    <Show
      when={props.standing === 'doubt'}
      fallback={
        <>
          <Show when={props.standing === 'next'}>
            <circle class="halo" r={props.radius * 1.45} />
          </Show>
          <circle class="head" r={props.radius} />
        </>
      }
    >
      <path class="head" d={triangle(props.radius * 1.5)} />
    </Show>
  );
}

const pointsOf = ({ positions }: MapView, order: readonly number[]): string =>
  order
    .flatMap((number) => positions.find((position) => position.number === number) ?? [])
    .map(({ x, y }) => `${x},${y}`)
    .join(' ');

const triangle = (r: number): string => `M0 ${-r} L${r * 0.95} ${r * 0.7} L${-r * 0.95} ${r * 0.7} Z`;
const tick = (r: number): string => `M${r * 0.55} ${-r * 0.95} l${r * 0.22} ${r * 0.25} l${r * 0.45} ${-r * 0.55}`;

function description({ name, positions }: MapView): string {
  const groups = (['next', 'doubt', 'done', 'open'] as const).map((standing) => ({
    standing,
    numbers: positions.filter((position) => position.standing === standing).map(({ number }) => number),
  }));
  return patternPlan.drawing(
    name,
    groups.filter(({ numbers }) => numbers.length > 0),
  );
}
