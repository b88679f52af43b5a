/** The fields of a step that tightens, and what its passes come to. */
import { said } from './said.ts';

export const tightenForm = said('tightenForm', {
  pattern: 'Pattern',
  tool: 'Torque tool',
  adapter: 'Adapter',
  bareWrench: 'bare wrench',
  confirm: 'Each value is',
  confirms: {
    each: 'read back and confirmed',
    'by going on': 'confirmed by going on',
    'witness each': 'read by two people',
  },
  usualConfirm: 'read back and confirmed, as usual',
  finalTorque: 'Final torque',
  acceptedFrom: 'Accepted from',
  acceptedTo: 'Accepted to',
  pass: {
    kind: 'Kind of pass',
    kinds: {
      percent: 'per cent of the final torque',
      torque: 'a torque of its own',
      snug: 'snug by hand',
      angle: 'turned further by an angle',
      'circular check': 'checked round the pattern until none turns',
    },
    name: 'Name of the pass',
    percent: 'Per cent',
    torque: 'Torque',
    from: 'From',
    to: 'To',
    angle: 'Angle',
    tolerance: 'Tolerance',
    only: 'Only these fasteners',
    all: 'all',
  },
  planned: {
    title: 'What the passes come to',
    nothing: 'Nothing yet: a value or the pattern is missing.',
    value: (pass: string, target: string, min: string, max: string) => `${pass}: ${target}, accepted ${min} to ${max}`,
    say: 'Say the passes',
    sayOf: (step: string) => `Say the passes of ${step}`,
    thisStep: 'this step',
  },
});
