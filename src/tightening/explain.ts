/** A plan of passes in one plain sentence. */
import { passes } from '../words/passes.ts';
import type { PlannedPass } from './pass.ts';
import { written } from './target.ts';

/** '10 fasteners in 4 passes: 18 N·m, 42 N·m, 60 N·m crosswise, then a check at 60 N·m until no nut turns round the pattern.' */
export function explainPasses(plan: readonly PlannedPass[]): string {
  const fasteners = new Set(plan.flatMap(({ order }) => order)).size;
  return passes.plan(fasteners, plan.length, merged(plan.map((pass) => explained(pass, fasteners))));
}

interface Explained {
  readonly what: string;
  readonly order: PlannedPass['orderKind'];
}

function explained(pass: PlannedPass, fasteners: number): Explained {
  const value = explainValue(pass);
  const what = pass.order.length < fasteners ? passes.onFasteners(value, pass.order) : value;
  return { what, order: pass.orderKind };
}

function explainValue(pass: PlannedPass): string {
  switch (pass.kind) {
    case 'snug':
      return passes.snugByHand;
    case 'torque':
      return written(pass.target);
    case 'angle':
      return passes.turnedFurther(pass.angle.value);
    case 'circular check':
      return passes.checkedAt(written(pass.target));
    case 're-check':
      return passes.recheckedAt(written(pass.target), pass.afterHours);
    case 'loosen':
      return pass.name;
  }
}

/** The order is said once for passes that share it. */
function merged(parts: readonly Explained[]): string[] {
  return parts.map(({ what, order }, i) => (parts[i + 1]?.order === order ? what : passes.inOrder(what, order)));
}
