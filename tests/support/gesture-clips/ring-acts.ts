/** What goes on right before the camera at a ring of studs: large hands at work, people who come near. None is a gesture. */
import { HEIGHT, WIDTH } from '../../../src/gesture/frame.ts';
import { act, TURN, type Director } from './acts.ts';
import { between, ease, pick } from './canvas.ts';
import { person } from './person.ts';
import { glove, walker } from './things.ts';

/** There, a while, and back: how much of it is done, 0 to 1. */
const thereAndBack = (t: number, there: number, seconds: number, back: number): number =>
  Math.min(ease(t / there), ease((seconds - t) / back));

/** A hand as large as one that waves comes far into the view, takes something, and goes back the way it came. */
const reachAcross: Director = ({ random }, from) => {
  const hand = glove(between(random, 26, 70), between(random, 45, 115), random);
  const [come, stay, go] = [between(random, 0.3, 0.9), between(random, 0.05, 1.5), between(random, 0.3, 0.9)];
  const isFromRight = random() < 0.5;
  const start = { x: -hand.width / 2 - 22, y: between(random, 40, 110) };
  const goal = { x: between(random, 70, 135), y: between(random, 40, 95) };
  const lean = between(random, -40, 40);
  const seconds = come + stay + go;
  return act('reach across', from, seconds, (moment, t) => {
    const part = thereAndBack(t, come, seconds, go);
    const x = start.x + (goal.x - start.x) * part;
    const centre = { x: isFromRight ? WIDTH - x : x, y: start.y + (goal.y - start.y) * part };
    moment.before.push((on) => hand.draw(on, centre, { x: centre.x + lean, y: HEIGHT + 50 }, 3));
  });
};

/** Both hands work where they are, now faster, now slower: to and fro, up and down, round. */
const handsAtWork: Director = ({ random }, from) => {
  const seconds = between(random, 2, 8);
  const middle = between(random, 45, 115);
  const hands = [-1, 1].map((side) => ({
    glove: glove(between(random, 18, 45), between(random, 24, 60), random),
    place: { x: middle + side * between(random, 14, 40), y: between(random, 62, 108) },
    pace: between(random, 0.5, 2.8),
    by: { x: between(random, 0, 16), y: between(random, 0, 12) },
    phase: between(random, 0, TURN),
    elbow: { x: middle + side * between(random, 30, 80), y: HEIGHT + 45 },
  }));
  return act('hands at work', from, seconds, (moment, t) => {
    const part = thereAndBack(t, 0.6, seconds, 0.6);
    for (const { glove: hand, place, pace, by, phase, elbow } of hands) {
      const beat = TURN * pace * t + phase;
      const centre = {
        x: elbow.x + (place.x - elbow.x) * part + by.x * Math.sin(beat) * part,
        y: elbow.y + 30 + (place.y - elbow.y - 30) * part + by.y * Math.sin(beat * 1.3) * part,
      };
      moment.before.push((on) => hand.draw(on, centre, elbow, 2));
    }
  });
};

/** Somebody comes in behind, looks on and says something, and goes on or back. */
const onlooker: Director = ({ random }, from) => {
  const who = person(between(random, 9, 24), random);
  const [come, stay, go] = [between(random, 0.8, 2.5), between(random, 1, 6), between(random, 0.8, 2.5)];
  const side = pick(random, [-1, 1]);
  const place = between(random, 20, WIDTH - 20);
  const y = between(random, 10, 55);
  const outside = WIDTH / 2 + side * (WIDTH / 2 + 2.2 * who.radius);
  const leaves = random() < 0.5 ? outside : WIDTH - outside;
  const [turn, pace, syllables] = [between(random, 5, 40), between(random, 0.1, 0.5), between(random, 3, 6)];
  const seconds = come + stay + go;
  return act('somebody looks on', from, seconds, (moment, t) => {
    const isGoing = t > come + stay;
    const part = isGoing ? ease((seconds - t) / go) : ease(t / come);
    const edge = isGoing ? leaves : outside;
    const pose = {
      x: edge + (place - edge) * part,
      y: y + (part < 1 ? Math.abs(Math.sin(6 * t)) : 0),
      scale: 1,
      yaw: turn * Math.sin(TURN * pace * t),
      pitch: 5 * Math.sin(2.3 * pace * TURN * t),
      mouth: Math.max(0, Math.sin(TURN * syllables * t) * Math.sin(5.6 * t)),
    };
    moment.behind.push((on) => who.draw(on, pose));
  });
};

/** Somebody walks past between the camera and the mechanic, and hides much of the view. */
const passInFront: Director = ({ random }, from) => {
  const who = walker(random, between(random, 140, 300));
  const seconds = between(random, 1.1, 3);
  const goesLeft = random() < 0.5;
  const stride = between(random, 5, 7.5);
  return act('walk past in front', from, seconds, (moment, t) => {
    const gone = -who.width / 2 + (t / seconds) * (WIDTH + who.width);
    moment.before.push((on) => who.draw(on, goesLeft ? WIDTH - gone : gone, stride * t));
  });
};

export const RING_DISTRACTIONS: readonly [Director, ...Director[]] = [reachAcross, handsAtWork, onlooker, passInFront];
