/** What the work screen shows of the state of the work. */
import { said } from './said.ts';

export const workView = said('workView', {
  passNamed: (pass: number, of: number, name: string) => `Pass ${pass} of ${of}: ${name}`,
  runningTorque: 'Running torque, before pass 1',
  accepted: (window: string, accepted: string, rule: 'guard band' | 'relative tool error') =>
    `${window}; accepted ${accepted} (${rule})`,
  nothingAccepted: (window: string, rule: 'guard band' | 'relative tool error') =>
    `${window}; nothing is accepted (${rule})`,
  range: (min: string, max: string) => `${min} to ${max}`,
  verdict: {
    in: 'inside the window',
    under: '▼ under the window',
    over: '▲ over the window',
    'no window': 'no window is stated',
  },
  openings: (capped: number, open: number) => `${capped} ${capped === 1 ? 'opening' : 'openings'} capped, ${open} open`,
  allConnected: 'All openings connected',
  noneOpened: 'No opening opened yet',
});
