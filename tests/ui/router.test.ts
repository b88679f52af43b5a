// @vitest-environment jsdom
import fc from 'fast-check';
import { createRoot } from 'solid-js';
import { describe, expect, test } from 'vitest';
import { addressOf, createPlace, go, placeAt, type Place } from '../../src/ui/router.ts';

/** What a browser makes of an address: it escapes what may not stand in one. */
const hashOf = (fragment: string): string => new URL(`http://localhost/${fragment}`).hash;

const session = fc.string({ minLength: 1, unit: 'grapheme' });
const place: fc.Arbitrary<Place> = fc.oneof(
  fc.constantFrom({ kind: 'start' } as const, { kind: 'editor' } as const, { kind: 'prepare' } as const),
  fc.record({ kind: fc.constantFrom('work' as const, 'replay' as const, 'second' as const), session }),
  fc.record({ kind: fc.constantFrom('display' as const, 'teach' as const), session: fc.option(session) }),
  fc.record({ kind: fc.constant('check' as const), person: session, session: fc.option(session) }),
);

describe('an address', () => {
  test('leads back to its place, whatever a session is called', () =>
    fc.assert(
      fc.property(place, (each) => {
        expect(placeAt(hashOf(addressOf(each)))).toEqual(each);
      }),
    ));
  test('is always of some place, whose address leads there again', () => {
    const begun = fc.constantFrom(
      '',
      '/',
      '/prepare',
      '/work/',
      '/replay/',
      '/second/',
      '/check/',
      '/display/',
      '/teach/',
    );
    const odd = fc.array(
      fc.constantFrom('#', '/', 'work', '%', '%2', '%2F', '%ff', '%C3%A9', 'a', ' ', '?', 'é', '..'),
    );
    fc.assert(
      fc.property(begun, odd, (start, rest) => {
        const found = placeAt(hashOf(`#${start}${rest.join('')}`));
        expect(placeAt(hashOf(addressOf(found)))).toEqual(found);
      }),
    );
  });
  test.each([
    ['none', ''],
    ['an empty one', '#'],
    ['the start', '#/'],
    ['a preparation of something', '#/prepare/a'],
    ['an unknown place', '#/print/a'],
    ['a place in capitals', '#/Work/a'],
    ['no session', '#/work'],
    ['an empty session', '#/work/'],
    ['a second window on none', '#/second/'],
    ['a session that is no text', '#/work/%E0%A4%A'],
    ['a half escape', '#/replay/50%'],
    ['more than a session', '#/work/a/b'],
    ['a slash at its end', '#/work/a/'],
    ['a display of more than a session', '#/display/a/b'],
    ['a teach page of more than a session', '#/teach/a/b'],
    ['a check of nobody', '#/check/'],
    ['a check of more than a person and a session', '#/check/a/b/c'],
    ['a check from a session that is no text', '#/check/a/%ff'],
    ['something before the place', '#x/work/a'],
    ['no slash before the place', '#work/a'],
    ['a path in a path', '#/work/work/a'],
  ])('leads to the start: %s', (_, hash) => expect(placeAt(hash)).toEqual({ kind: 'start' }));
  test('takes a session as one name, with what is escaped in it', () => {
    expect(placeAt('#/work/a%2Fb%20c')).toEqual({ kind: 'work', session: 'a/b c' });
    expect(placeAt('#/second/a')).toEqual({ kind: 'second', session: 'a' });
    expect(placeAt('#/replay/..')).toEqual({ kind: 'replay', session: '..' });
    expect(placeAt('#/work/a?b#c')).toEqual({ kind: 'work', session: 'a?b#c' });
  });
});

describe('the place', () => {
  /** Browsers tell of a new address a moment after it is set. */
  const told = (): Promise<unknown> =>
    new Promise((resolve) => window.addEventListener('hashchange', resolve, { once: true }));

  test('follows the address as long as somebody looks at it', async () => {
    const { at, dispose } = createRoot((dispose) => ({ at: createPlace(), dispose }));
    expect(at()).toEqual({ kind: 'start' });
    const work: Place = { kind: 'work', session: 'a' };
    let change = told();
    go(work);
    await change;
    expect(at()).toEqual(work);
    change = told();
    location.hash = '#/nowhere';
    await change;
    expect(at()).toEqual({ kind: 'start' });

    dispose();
    change = told();
    go(work);
    await change;
    expect(at()).toEqual({ kind: 'start' });
  });
});
