/** What happens in a film is made of acts: each changes the moment while it lasts. */
import type { GestureKind } from '../../../src/gesture/gesture.ts';
import type { Random } from '../noise.ts';
import type { Canvas } from './canvas.ts';
import type { Person, Pose } from './person.ts';

/** One moment of a film, before it is drawn. */
export interface Moment {
  pose: Pose;
  readonly behind: ((on: Canvas) => void)[];
  readonly before: ((on: Canvas) => void)[];
  light: number;
}

export interface Act {
  readonly name: string;
  /** Seconds in the film. */
  readonly from: number;
  readonly to: number;
  /** null for what is no gesture. */
  readonly gesture: GestureKind | null;
  readonly change: (moment: Moment, seconds: number) => void;
}

export interface Stage {
  readonly random: Random;
  readonly person: Person;
  readonly rest: Pose;
  /** Frames a second. */
  readonly rate: number;
}

/** An act at a time of the film. */
export type Director = (stage: Stage, from: number) => Act;

/** Radians. */
export const TURN = 2 * Math.PI;
/** The mechanic's head, moved and turned by so much. */
export const turned = (moment: Moment, by: Partial<Record<'x' | 'y' | 'yaw' | 'pitch' | 'mouth', number>>): void => {
  const { pose } = moment;
  moment.pose = {
    ...pose,
    x: pose.x + (by.x ?? 0),
    y: pose.y + (by.y ?? 0),
    yaw: pose.yaw + (by.yaw ?? 0),
    pitch: pose.pitch + (by.pitch ?? 0),
    mouth: Math.max(pose.mouth, by.mouth ?? 0),
  };
};

/** What is no gesture. */
export const act = (name: string, from: number, seconds: number, change: Act['change']): Act => ({
  name,
  from,
  to: from + seconds,
  gesture: null,
  change,
});
