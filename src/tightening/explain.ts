/** A plan of passes in one plain sentence. */
import type { PlannedPass } from './pass.ts';
import { written } from './target.ts';

/** '10 fasteners in 4 passes: 18 N·m, 42 N·m, 60 N·m crosswise, then a check at 60 N·m until no nut turns round the pattern.' */
export function explainPasses(plan: readonly PlannedPass[]): string {
  const fasteners = new Set(plan.flatMap(({ order }) => order)).size;
  const parts = merged(plan.map(passWords));
  const list = parts.length > 1 ? `${parts.slice(0, -1).join(', ')}, then ${parts.at(-1) ?? ''}` : (parts[0] ?? '');
  return `${counted(fasteners, 'fastener')} in ${counted(plan.length, 'pass', 'es')}: ${list}.`;
}

interface Words {
  readonly value: string;
  readonly order: string;
}

function passWords(pass: PlannedPass, _index: number, all: readonly PlannedPass[]): Words {
  const every = new Set(all.flatMap(({ order }) => order)).size;
  const scope = pass.order.length < every ? ` on ${pass.order.join(' ')}` : '';
  return { value: `${valueWords(pass)}${scope}`, order: ORDER_WORDS[pass.orderKind] };
}

function valueWords(pass: PlannedPass): string {
  switch (pass.kind) {
    case 'snug':
      return 'snug by hand';
    case 'torque':
      return written(pass.target);
    case 'angle':
      return `${pass.angle.value}° further`;
    case 'circular check':
      return `a check at ${written(pass.target)} until no nut turns`;
    case 're-check':
      return `a re-check at ${written(pass.target)} after ${pass.afterHours} hours`;
    case 'loosen':
      return pass.name;
  }
}

/** The order is said once for passes that share it. */
function merged(words: readonly Words[]): string[] {
  return words.map(({ value, order }, i) => (words[i + 1]?.order === order ? value : `${value} ${order}`));
}

const ORDER_WORDS: Readonly<Record<PlannedPass['orderKind'], string>> = {
  explicit: 'in the order of the manual',
  crosswise: 'crosswise',
  circular: 'round the pattern',
  spiral: 'from the middle outwards',
  grouped: 'crosswise in groups',
  'in turn': 'part by part',
  reverse: 'in reverse order',
};

const counted = (count: number, what: string, plural = 's'): string => `${count} ${what}${count === 1 ? '' : plural}`;
