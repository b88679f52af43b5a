/** Tables for a spreadsheet: what stands above their columns. */
import { said } from './said.ts';

/** What every row begins with. */
const everyRow = {
  session: 'session',
  entry: 'entry',
  time: 'time (UTC)',
  person: 'person',
  step: 'step',
  stepTitle: 'step title',
};

export const spreadsheets = said('spreadsheets', {
  readings: {
    ...everyRow,
    pass: 'pass',
    fastener: 'fastener',
    evidence: 'evidence',
    reading: 'reading',
    unit: 'unit',
    verdict: 'verdict',
    status: 'status',
    inDoubt: 'in doubt',
    standsInFor: 'stands in for entry',
    witness: 'witness',
    witnessReading: 'witness reading',
    witnessUnit: 'witness unit',
    tool: 'tool',
    target: 'target at the fastener',
    targetUnit: 'target unit',
    runningTorque: 'running torque added',
    runningTorqueUnit: 'running torque unit',
    windowMin: 'window min at the wrench',
    windowMax: 'window max at the wrench',
    windowUnit: 'window unit',
    judgedBy: 'judged by',
  },
  values: {
    ...everyRow,
    value: 'value',
    unit: 'unit',
    windowMin: 'window min',
    windowMax: 'window max',
    verdict: 'verdict',
    status: 'status',
    waited: 'waited, s',
    leftOpen: 'left open',
    standsInFor: 'stands in for entry',
  },
  yes: 'yes',
  no: 'no',
});
