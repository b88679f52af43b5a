import { createMemo, createSignal, For, onCleanup, onMount, Show, type JSX } from 'solid-js';
import type { SessionRecord } from '../../record/session-record.ts';
import { timeLine } from '../../words/time-line.ts';
import { showMoment } from '../moment.ts';
import { DRAWN, lasting, layAxis, nearestTo, ticksOf, type Axis } from './axis.ts';
import { ShapePath } from './shape.tsx';
import { LANES, layTimeLine, SHAPES, type Lane, type TimeLine } from './time-line.ts';

/** In pixels. */
const TOP = 22;
const ROW = 24;
const HEIGHT = TOP + LANES.length * ROW + 22;
const middleOf = (lane: Lane): number => TOP + ROW * (LANES.indexOf(lane) + 0.5);
/** Room for a mark with how many events lie there, and for a time, in pixels. */
const MARK_WIDTH = 24;
const TIME_WIDTH = 100;

/** The whole session at a glance. A pointer on it goes to a moment; the slider does the same for a keyboard. */
export function TimeLineView(props: {
  readonly record: SessionRecord;
  readonly at: number;
  readonly onGo: (seq: number) => void;
}): JSX.Element {
  let drawing: SVGSVGElement | undefined;
  const [width, setWidth] = createSignal(600);
  onMount(() => {
    const watcher = new ResizeObserver(([entry]) => setWidth(Math.max(1, entry?.contentRect.width ?? 1)));
    if (drawing) watcher.observe(drawing);
    onCleanup(() => watcher.disconnect());
  });
  const times = createMemo(() => props.record.entries.map(({ at }) => at.utc));
  const axis = createMemo(() => layAxis(times(), DRAWN));
  const line = createMemo(() => layTimeLine(props.record, axis(), Math.max(1, Math.floor(width() / MARK_WIDTH))));
  const share = (position: number): number => (axis().length === 0 ? 0 : position / axis().length);
  const scrubTo = (event: PointerEvent): void => {
    const seq = event.type === 'pointerdown' && event.target instanceof Element ? markUnder(event.target) : null;
    const box = drawing?.getBoundingClientRect();
    if (seq !== null) props.onGo(seq);
    else if (box) props.onGo(nearestTo(axis(), ((event.clientX - box.left) / box.width) * axis().length));
  };
  return (
    <figure class="time-line">
      <div class="lanes">
        <ul class="lane-names" aria-hidden="true">
          <For each={LANES}>{(lane) => <li>{timeLine.lanes[lane]}</li>}</For>
        </ul>
        <svg
          ref={drawing}
          height={HEIGHT}
          role="img"
          aria-label={summary(props.record, axis(), line())}
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId);
            scrubTo(event);
          }}
          onPointerMove={(event) => event.currentTarget.hasPointerCapture(event.pointerId) && scrubTo(event)}
        >
          <Gaps axis={axis()} share={share} width={width()} />
          <For each={LANES}>
            {(lane) => <line class="lane" x1="0" x2="100%" y1={middleOf(lane)} y2={middleOf(lane)} />}
          </For>
          <For each={line().spans}>
            {(span) => (
              <rect
                class={`span ${span.what}`}
                data-seq={span.seq}
                x={percent(span.from)}
                width={percent(Math.max(0, span.to - span.from))}
                y={middleOf(span.what === 'step' ? 'steps' : 'holds') - 8}
                height="16"
              >
                <title>{span.title}</title>
              </rect>
            )}
          </For>
          <For each={line().marks}>
            {(mark) => (
              <svg
                class="mark"
                x={percent(mark.position)}
                y={middleOf(mark.lane)}
                overflow="visible"
                data-seq={mark.seq}
              >
                <title>{timeLine.mark(timeLine.shapes[mark.shape], mark.seq, mark.count, mark.ofShape)}</title>
                <ShapePath shape={mark.shape} />
                <Show when={mark.count > 1}>
                  <text class="here" x="7" y="-1">
                    {mark.count}
                  </text>
                </Show>
              </svg>
            )}
          </For>
          <Ticks axis={axis()} times={times()} share={share} most={width() / TIME_WIDTH} />
          <svg class="playhead" x={percent(share(axis().positions[props.at] ?? 0))} overflow="visible">
            <path d={`M-6 0H6L0 8ZM0 8V${HEIGHT}`} />
          </svg>
        </svg>
      </div>
      <Legend counts={line().counts} />
    </figure>
  );
}

const percent = (share: number): string => `${share * 100}%`;

function markUnder(target: Element): number | null {
  const seq = target.closest('.mark')?.getAttribute('data-seq');
  return seq === null || seq === undefined ? null : Number(seq);
}

/** Gaps are hatched where the axis is broken, and named where there is room. */
function Gaps(props: {
  readonly axis: Axis;
  readonly share: (position: number) => number;
  readonly width: number;
}): JSX.Element {
  const named = createMemo(() => {
    let free = 0;
    return props.axis.gaps.map((gap) => {
      const [from, name] = [props.share(gap.position), lasting(gap.lasted)];
      const room = (name.length * 8) / props.width;
      const isNamed = from >= free && from + room <= 1;
      if (isNamed) free = from + room;
      return { gap, from, name, isNamed };
    });
  });
  return (
    <For each={named()}>
      {({ gap, from, name, isNamed }) => (
        <g class="gap">
          <title>{timeLine.gap(name)}</title>
          <rect x={percent(from)} width={percent(props.share(gap.shown))} y={TOP - 4} height={LANES.length * ROW + 4} />
          <Show when={isNamed}>
            <text x={percent(from)} y="14">
              {name}
            </text>
          </Show>
        </g>
      )}
    </For>
  );
}

function Ticks(props: {
  readonly axis: Axis;
  readonly times: readonly string[];
  readonly share: (position: number) => number;
  readonly most: number;
}): JSX.Element {
  const ticks = createMemo(() => ticksOf(props.axis, props.times, Math.max(1, props.most)));
  const isNearEnd = (position: number): boolean => props.share(position) > 1 - 0.5 / props.most;
  return (
    <For each={ticks()}>
      {(tick) => (
        <svg class="tick" x={percent(props.share(tick.position))} overflow="visible">
          <path d={`M0 ${TOP}V${HEIGHT - 16}`} />
          {/* At the end there is only room to the left. */}
          <text
            x={isNearEnd(tick.position) ? -2 : 2}
            y={HEIGHT - 4}
            text-anchor={isNearEnd(tick.position) ? 'end' : 'start'}
          >
            {showMoment(tick.utc).slice(11, 16)}
          </text>
        </svg>
      )}
    </For>
  );
}

function Legend(props: { readonly counts: TimeLine['counts'] }): JSX.Element {
  const present = createMemo(() => SHAPES.filter((shape) => props.counts[shape] > 0));
  return (
    <ul class="legend" aria-label={timeLine.legend}>
      <For each={present()}>
        {(shape) => (
          <li>
            <svg width="18" height="18" viewBox="-9 -9 18 18" aria-hidden="true">
              <ShapePath shape={shape} />
            </svg>
            {timeLine.counted(timeLine.shapes[shape], props.counts[shape])}
          </li>
        )}
      </For>
    </ul>
  );
}

/** Of so many gaps it is told where they are. */
const MOST_TOLD = 10;

/** The drawing in words. */
function summary({ entries }: SessionRecord, { gaps, setBack }: Axis, { spans, marks }: TimeLine): string {
  const [first, last] = [entries[0], entries.at(-1)];
  const from = first ? showMoment(first.at.utc) : '';
  const to = last ? showMoment(last.at.utc) : '';
  const breaks = gaps.map(({ lasted, before }) => timeLine.gapBefore(lasting(lasted), before));
  const stepsDone = spans.filter(({ what }) => what === 'step').length;
  return [
    timeLine.summary(from, to, entries.length, stepsDone),
    breaks.length > 0 ? timeLine.longGaps(breaks.slice(0, MOST_TOLD), breaks.length > MOST_TOLD) : '',
    setBack.length > 0 ? timeLine.setBack(setBack.length) : '',
    marks.some(({ count }) => count > 1) ? timeLine.severalHere : '',
  ]
    .filter(Boolean)
    .join(' ');
}
