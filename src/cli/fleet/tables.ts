/**
 * The tables that a fleet of sessions is laid out in: every column with its type, and what it means with its unit. The
 * database, the rows and the text beside the files all come from here.
 */

/** Types of SQL; each is one of Parquet as well. */
export type ColumnType = 'VARCHAR' | 'INTEGER' | 'DOUBLE' | 'BOOLEAN' | 'TIMESTAMPTZ';
export type Column = readonly [type: ColumnType, meaning: string];
export type Table = Readonly<Record<string, Column>>;

const SESSION = ['VARCHAR', 'which session; the same in every table'] as const satisfies Column;
const ENTRY = ['INTEGER', 'number of the entry in the record of the session, from 0'] as const satisfies Column;
const STEP = ['VARCHAR', 'id of the step in the procedure'] as const satisfies Column;
const PASS = ['INTEGER', 'which pass, from 1; 0 is the round in which running torque is measured'] as const;
const FASTENER = ['INTEGER', 'number of the fastener, as on the part'] as const satisfies Column;
const SECONDS = [
  'DOUBLE',
  'how long, s; empty where it is not over, or where the clock was set back meanwhile',
] as const;

export const TABLES = {
  files: {
    file: [
      'VARCHAR',
      'the file, by its place under the folder that was read; it may hold a name that somebody gave it',
    ],
    verdict: [
      'VARCHAR',
      '“intact”: it is in the figures. “not intact”, “not readable”: it is not. “copy”: another file holds the same session, as far or further. “contradicted”: another file tells of the same session differently',
    ],
    entry: ['INTEGER', 'the first entry that is not as it was, where the fault is in an entry'],
    why: ['VARCHAR', 'why it is not in the figures; it may quote what was found in the file, also a name'],
    session: SESSION,
    entries: ['INTEGER', 'entries that were found'],
    head: ['VARCHAR', 'hash of the last entry, 64 hexadecimal digits'],
    thumbprint: ['VARCHAR', 'of the key that sealed it (RFC 7638)'],
  },
  sessions: {
    session: SESSION,
    procedure: ['VARCHAR', 'id of the procedure'],
    procedure_title: ['VARCHAR', 'its title'],
    procedure_sha256: ['VARCHAR', 'SHA-256 of its canonical JSON (RFC 8785)'],
    document: ['VARCHAR', 'the document that its values come from'],
    revision: ['VARCHAR', 'revision of that document'],
    component: ['VARCHAR', 'what was worked on'],
    app: ['VARCHAR', 'the program that wrote the record'],
    opened_at: ['TIMESTAMPTZ', 'when it was opened, UTC'],
    closed_at: ['TIMESTAMPTZ', 'when it was closed, UTC; empty where it was under way'],
    mechanic: ['VARCHAR', 'who began it; empty unless names were asked for'],
    second_person: ['VARCHAR', 'the second person at the beginning; empty unless names were asked for'],
    unclear: ['INTEGER', 'how often something that was said was asked about because it was not clear'],
    refused: ['INTEGER', 'how often something was refused for another reason'],
  },
  steps: {
    session: SESSION,
    step: STEP,
    kind: ['VARCHAR', 'kind of the step'],
    title: ['VARCHAR', 'its title'],
    began_at: ['TIMESTAMPTZ', 'when work came to it, UTC'],
    ended_at: ['TIMESTAMPTZ', 'when work left it, UTC'],
    seconds: [SECONDS[0], `${SECONDS[1]}; stops are in it`],
    outcome: ['VARCHAR', 'how work left it: done, skipped, taken back; open where it did not'],
  },
  stops: {
    session: SESSION,
    kind: ['VARCHAR', '“stand by”, “hand over”, or “break”: nothing was done for long, or the page was closed'],
    step: STEP,
    began_at: ['TIMESTAMPTZ', 'UTC'],
    ended_at: ['TIMESTAMPTZ', 'UTC'],
    seconds: SECONDS,
  },
  holds: {
    session: SESSION,
    step: STEP,
    began_at: ['TIMESTAMPTZ', 'when it was said that the weight is held, UTC'],
    ended_at: ['TIMESTAMPTZ', 'when it was said that it is set down, UTC; empty where it never was'],
    seconds: ['INTEGER', 'how long it was held, s, by the wall clock'],
    helps: ['INTEGER', 'how often help was called meanwhile'],
  },
  readings: {
    session: SESSION,
    entry: ENTRY,
    captured_at: ['TIMESTAMPTZ', 'when it was said, UTC'],
    confirmed_at: ['TIMESTAMPTZ', 'when its read-back was confirmed, UTC; empty where it never was'],
    person: ['VARCHAR', 'who said it; empty unless names were asked for'],
    step: STEP,
    pass: PASS,
    pass_name: ['VARCHAR', 'what the procedure calls the pass'],
    fastener: FASTENER,
    label: ['VARCHAR', 'what the fastener is called: stud, bolt'],
    tool: ['VARCHAR', 'id of the tool in the procedure'],
    kind: ['VARCHAR', '“torque” or “running torque”'],
    evidence: ['VARCHAR', '“read” off a scale, or the “click” of a tool at its set value'],
    value: ['VARCHAR', 'the value as it was said, decimal text'],
    unit: ['VARCHAR', 'unit of that value'],
    value_nm: ['DOUBLE', 'the value, N·m'],
    target_nm: ['DOUBLE', 'the value of the manual, at the fastener, N·m'],
    setting_nm: ['DOUBLE', 'what was called out, at the wrench: with running torque and adapter, N·m'],
    window_min_nm: ['DOUBLE', 'least value allowed, at the wrench, N·m'],
    window_max_nm: ['DOUBLE', 'greatest value allowed, at the wrench, N·m'],
    deviation_percent: ['DOUBLE', '(value − setting) / setting, %; empty for running torque'],
    verdict: ['VARCHAR', '“in”, “under”, “over”, “not provable”, “nut worn”'],
    status: ['VARCHAR', 'what became of it: confirmed, rejected, replaced, disregarded, disputed, set aside, captured'],
    corrects: ['INTEGER', 'entry of the reading that it stands in for'],
    attempt: ['INTEGER', 'which reading of its fastener in its pass it is, counted from 1'],
    stands: ['BOOLEAN', 'whether it is the one that counts at the end'],
    first_value: [
      'BOOLEAN',
      'whether it is the first of its fastener in its pass that was confirmed and not corrected or disregarded later',
    ],
    questions: [
      'INTEGER',
      'how much was asked beyond the usual read-back: unclear words before it, a doubt about it, silence after it',
    ],
    witness: ['VARCHAR', 'the second person who read it too; empty unless names were asked for'],
    witness_nm: ['DOUBLE', 'what the second person read, N·m'],
  },
  doubts: {
    session: SESSION,
    entry: ENTRY,
    doubt: ['VARCHAR', 'why the reading was asked about'],
    rank: ['INTEGER', '1 is the gravest'],
  },
  deviations: {
    session: SESSION,
    entry: ENTRY,
    step: STEP,
    pass: PASS,
    fastener: FASTENER,
    what: ['VARCHAR', 'over torque, under torque, takes no torque, damage'],
    reading: ['INTEGER', 'entry of the reading that it is about'],
    reason: [
      'VARCHAR',
      'as it was dictated or typed: people may be named in it, so it is empty unless names were asked for',
    ],
    status: ['VARCHAR', 'stated, disregarded; reason wanted or given where it was not finished'],
    left_open: ['BOOLEAN', 'whether the fastener was passed over'],
  },
  tools: {
    session: SESSION,
    tool: ['VARCHAR', 'id of the tool in the procedure'],
    name: ['VARCHAR', 'its name in the procedure'],
    type: ['VARCHAR', '“indicating” or “setting” (ISO 6789-1)'],
    class: ['VARCHAR', 'its class (ISO 6789-1)'],
    range_min_nm: ['DOUBLE', 'lowest mark, N·m'],
    range_max_nm: ['DOUBLE', 'full scale, N·m'],
    resolution_nm: ['DOUBLE', 'one mark, N·m'],
    maximum_error_percent: ['DOUBLE', 'greatest error that it may have, % of the reading, where that is stated'],
    calibration_due: ['VARCHAR', 'last day of its calibration, YYYY-MM-DD'],
  },
} as const satisfies Readonly<Record<string, Table>>;

export type TableName = keyof typeof TABLES;
export const TABLE_NAMES = Object.keys(TABLES) as readonly TableName[];

interface Cells {
  readonly VARCHAR: string;
  readonly INTEGER: number;
  readonly DOUBLE: number;
  readonly BOOLEAN: boolean;
  readonly TIMESTAMPTZ: Date;
}

/** A row of a table, by the names of its columns. */
export type Row<Name extends TableName> = {
  readonly [C in keyof (typeof TABLES)[Name]]: (typeof TABLES)[Name][C] extends readonly [
    infer Type extends ColumnType,
    string,
  ]
    ? Cells[Type] | null
    : never;
};

/** Rows of some tables. */
export type Rows = { readonly [Name in TableName]?: readonly Row<Name>[] };
