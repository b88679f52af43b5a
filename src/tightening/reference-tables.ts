/**
 * The general tables as data, in lbf·in. Public reprints of them differ, so each has its source, its edition and a SHA-256
 * over its rows as JSON: a changed figure is a failed test, and a deliberate change shows in both places.
 */

export interface Source {
  readonly document: string;
  readonly table: string;
  readonly edition: string;
}

interface Table<Row> {
  readonly source: Source;
  readonly sha256: string;
  readonly rows: readonly Row[];
}

type Range = readonly [low: number, high: number, maximum: number];

interface RecommendedRow {
  readonly thread: string;
  readonly tension: Range;
  readonly shear: Range;
  readonly shearEstimated?: true;
}

const row = (thread: string, tension: Range, shear: Range): RecommendedRow => ({ thread, tension, shear });
const estimated = (thread: string, tension: Range, shear: Range): RecommendedRow => ({
  ...row(thread, tension, shear),
  shearEstimated: true,
});

/** Recommended torque for nuts on oil-free cadmium-plated threads: low, high, maximum allowable. */
export const RECOMMENDED: Table<RecommendedRow> = {
  source: { document: 'AC 43.13-1B', table: 'Table 7-1', edition: '1998-09-08' },
  sha256: 'e5d4c28f9fe9367d08cd0c7759a7963752bf748cb92944b4c3ea316e73770587',
  rows: [
    row('8-36', [12, 15, 20], [7, 9, 12]),
    row('10-32', [20, 25, 40], [12, 15, 25]),
    row('1/4-28', [50, 70, 100], [30, 40, 60]),
    row('5/16-24', [100, 140, 225], [60, 85, 140]),
    row('3/8-24', [160, 190, 390], [95, 110, 240]),
    row('7/16-20', [450, 500, 840], [270, 300, 500]),
    row('1/2-20', [480, 690, 1100], [290, 410, 660]),
    row('9/16-18', [800, 1000, 1600], [480, 600, 960]),
    row('5/8-18', [1100, 1300, 2400], [600, 780, 1400]),
    row('3/4-16', [2300, 2500, 5000], [1300, 1500, 3000]),
    row('7/8-14', [2500, 3000, 7000], [1500, 1800, 4200]),
    estimated('1-14', [3700, 5500, 10000], [2200, 3300, 6000]),
    estimated('1-1/8-12', [5000, 7000, 15000], [3000, 4200, 9000]),
    estimated('1-1/4-12', [9000, 11000, 25000], [5400, 6600, 15000]),
    row('8-32', [12, 15, 20], [7, 9, 12]),
    row('10-24', [20, 25, 35], [12, 15, 21]),
    row('1/4-20', [40, 50, 75], [25, 30, 45]),
    row('5/16-18', [80, 90, 160], [48, 55, 100]),
    row('3/8-16', [160, 185, 275], [95, 100, 170]),
    row('7/16-14', [235, 255, 475], [140, 155, 280]),
    row('1/2-13', [400, 480, 880], [240, 290, 520]),
    row('9/16-12', [500, 700, 1100], [300, 420, 650]),
    row('5/8-11', [700, 900, 1500], [420, 540, 900]),
    row('3/4-10', [1150, 1600, 2500], [700, 950, 1500]),
    row('7/8-9', [2200, 3000, 4600], [1300, 1800, 2700]),
  ],
};

type MinimumRow = readonly [thread: string, minimum: number];

/**
 * Least run-down torque of used self-locking nuts. The Army minima are about twice those of the circular. Sizes of 1/4 in
 * and less have no number in TM 1-1500-204-23-6: a nut that fingers can run down is rejected.
 */
export const MINIMUM_PREVAILING: Readonly<
  Record<'AC 43.13-1B' | 'TM 1-1500-204-23-6' | 'TM 55-1520-240-23-1', Table<MinimumRow>>
> = {
  'AC 43.13-1B': {
    source: { document: 'AC 43.13-1B', table: 'Table 7-2', edition: '1998-09-08' },
    sha256: '847520984af578666a88bacd33b4499e8d6e4a89ed653071c8abe302665bb122',
    rows: [
      ['7/16-20', 8],
      ['1/2-20', 10],
      ['9/16-18', 13],
      ['5/8-18', 18],
      ['3/4-16', 27],
      ['7/8-14', 40],
      ['1-14', 55],
      ['1-1/8-12', 73],
      ['1-1/4-12', 94],
      ['7/16-14', 8],
      ['1/2-13', 10],
      ['9/16-12', 14],
      ['5/8-11', 20],
      ['3/4-10', 27],
      ['7/8-9', 40],
      ['1-8', 51],
      ['1-1/8-8', 68],
      ['1-1/4-8', 88],
    ],
  },
  /** Torque to start the nut on or off the bolt with no axial load. */
  'TM 1-1500-204-23-6': {
    source: { document: 'TM 1-1500-204-23-6', table: 'Table 2-8', edition: 'not stated in the copy read' },
    sha256: '1da037f7eb1105e6914da9bdca8c910d8e0885f47916922b6d866b3ccdb2b3cb',
    rows: [
      ['5/16-24', 6.5],
      ['3/8-24', 9.5],
      ['7/16-20', 14],
      ['1/2-20', 18],
      ['9/16-18', 24],
      ['5/8-18', 32],
      ['3/4-16', 50],
      ['7/8-14', 70],
      ['1-12', 90],
      ['1-1/8-12', 117],
      ['1-1/4-12', 143],
      ['1-3/8-12', 180],
      ['1-1/2-12', 210],
      ['5/16-18', 7.5],
      ['3/8-16', 12],
      ['7/16-14', 16.5],
      ['1/2-13', 24],
      ['9/16-12', 30],
      ['5/8-11', 40],
      ['3/4-10', 60],
      ['7/8-9', 82],
      ['1-8', 110],
      ['1-1/8-7', 137],
      ['1-1/4-7', 165],
      ['1-3/8-6', 200],
      ['1-1/2-6', 230],
      ['1-3/4-5', 300],
    ],
  },
  /** Torque to begin turning the nut again, at least two threads protruding; the same figures as TM 10-3510-209-24, table D-2. */
  'TM 55-1520-240-23-1': {
    source: { document: 'TM 55-1520-240-23-1', table: 'Friction torque, 1-13', edition: 'not stated in the copy read' },
    sha256: '1162890547dec2b8584baaeb86291d1988c3ea2c97906000ee4a8ebd5474b903',
    rows: [
      ['8-32', 1.5],
      ['10-32', 2],
      ['1/4-28', 3.5],
      ['5/16-24', 6.5],
      ['3/8-24', 9.5],
      ['7/16-20', 14],
      ['1/2-20', 18],
      ['9/16-18', 24],
      ['5/8-18', 32],
      ['3/4-16', 50],
      ['7/8-14', 70],
      ['1-12', 90],
      ['1-1/8-12', 117],
      ['1-1/4-12', 143],
    ],
  },
};
