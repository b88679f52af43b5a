import type { BrowserContext, Page } from 'playwright-core';
import type { Entry } from '../../src/record/entry.ts';
import { LONGEST } from '../../src/language/unheard.ts';
import type { EventBody } from '../../src/session/event.ts';
import { SETTLE } from '../../src/ui/settle.ts';
import { passPreparation } from './pass-preparation.ts';
import { synthesise, type Sound } from './speech.ts';
import { speak } from './spoken-microphone.ts';

/** Generous, because two cores decode, speak and draw at once; nothing here measures speed. */
const PATIENCE = 40_000;
/** Longer than the pause between an answer and the announcement that follows it, in milliseconds. */
const BREATH = 500;

/** Nothing on the screen changed by what came in. */
class Unnoticed extends Error {}

/** The app as a person meets it: seen, heard, spoken to, tapped and typed at. */
export class AppPage {
  /** @param reads how fast the one who taps reads what warns; at once, only where nothing is heard: it moves the page's clock */
  constructor(
    readonly page: Page,
    readonly url: string,
    readonly reads: 'in time' | 'at once' = 'in time',
  ) {}

  static async open(context: BrowserContext, url: string, reads?: AppPage['reads']): Promise<AppPage> {
    const app = new AppPage(await context.newPage(), url, reads);
    await app.page.goto(url);
    await app.page.getByRole('heading', { name: 'Bothhands' }).waitFor();
    // As somebody sets it who knows the job.
    await app.page.getByLabel('How fast the voice speaks').selectOption('faster');
    return app;
  }

  /** Begins the demonstration of that title. */
  async begin(title: string | RegExp, people: { mechanic: string; second?: string }): Promise<void> {
    await this.page.getByLabel('Mechanic').fill(people.mechanic);
    // The demonstrations have steps that a second person looks at.
    await this.page.getByLabel('Second person').fill(people.second ?? 'S. Invented');
    await this.page.getByRole('button', { name: title }).click();
    await passPreparation(this.page);
  }

  /** Waits until the app has finished speaking and listens: for a while, since it takes a breath before it answers. */
  async listening(): Promise<void> {
    const end = Date.now() + PATIENCE;
    for (let since = Date.now(); Date.now() - since < BREATH;) {
      if (!(await this.page.locator('.hearing.listening').isVisible())) since = Date.now();
      if (Date.now() > end) throw new Error(`The app does not listen: ${await this.page.locator('.ear').innerText()}`);
      await this.page.waitForTimeout(50);
    }
  }

  /**
   * Says something that means something here. Where the app shows that it did not understand, or nothing at all, it is said
   * once more, as people do: a busy machine drops sound now and then. @returns when it was last spoken, in ms since 1970
   */
  async say(what: Sound | string): Promise<{ from: number; to: number }> {
    const spoken = await this.utter(what).catch((error: unknown) => {
      if (error instanceof Unnoticed) return null;
      throw error;
    });
    const isIgnored = (await this.page.locator('.lines .heard.ignored').count()) > 0;
    return spoken === null || isIgnored ? this.utter(what) : spoken;
  }

  /** Speaks when the app listens, and waits until it has taken it in. @returns when it was spoken, in ms since 1970 */
  async utter(what: Sound | string): Promise<{ from: number; to: number }> {
    const sound = typeof what === 'string' ? await synthesise(what, { voice: 'rms' }) : what;
    await this.listening();
    const before = await this.heardCount();
    const spoken = await speak(this.page, sound);
    await this.tookIn(before, 'the spoken words');
    return spoken;
  }

  /** Written entries and ignored utterances together: it grows with whatever was heard. */
  async heardCount(): Promise<number> {
    const text = await this.page.locator('.lines').innerText();
    const logged = Number(/Logged\s+(\d+)/.exec(text)?.[1] ?? 0);
    return logged + Number(/\((\d+) not for us\)/.exec(text)?.[1] ?? 0);
  }

  heard(): Promise<string> {
    return this.page.locator('.lines .heard').innerText();
  }

  async tap(name: string): Promise<void> {
    await this.grows(() => this.page.getByRole('button', { name, exact: true }).click());
  }

  async type(line: string): Promise<void> {
    await this.page.getByLabel('Type what you would say').fill(line);
    await this.grows(() => this.page.keyboard.press('Enter'));
  }

  async press(key: string): Promise<void> {
    await this.page.locator('main.work').click({ position: { x: 2, y: 2 } });
    await this.grows(() => this.page.keyboard.press(key));
  }

  /** Answers what is asked, by touch and typing, as someone would for whom everything is in order. */
  async answer(): Promise<void> {
    const wanted = await this.wanted();
    if (await this.page.locator('.closing').isVisible()) return this.close();
    if (await this.page.locator('.measured').isVisible()) return this.measure(wanted);
    const value = /\n\s*([\d.]+)\s+(?:N·m|lbf·in)\s+Window/.exec(wanted)?.[1];
    if (value !== undefined) return this.type(value);
    // The nut's own drag is read, not set: any plausible one will do.
    if (/\n\s*read it\s/.test(wanted)) return this.type('22');
    const affirm = this.page.getByRole('button', { name: 'Affirm', exact: true });
    // A weight is carried to its last call before it is set down.
    if (wanted.includes('They come by themselves')) return this.tap('Next');
    // Nobody needs help where all goes well.
    const [answer] = await this.page.locator('.answers button').filter({ hasNotText: 'Help' }).all();
    if (answer) return this.grows(() => answer.click());
    return this.tap((await affirm.isEnabled()) ? 'Affirm' : 'Next');
  }

  /** A value of something else than a torque tool: in its window, and after its wait, for which the page's clock is put forward. */
  private async measure(wanted: string): Promise<void> {
    if (wanted.includes('Is that correct?')) return this.tap('Affirm');
    if (wanted.includes('begins the wait')) return this.tap('Next');
    const minutes = Number(/Wait (\d+):\d\d/.exec(wanted)?.[1] ?? -1) + 1;
    await this.page.evaluate((ahead) => {
      const { now } = Date;
      Date.now = () => now() + ahead;
    }, minutes * 60_000);
    return this.type(/Window ([\d.]+) to/.exec(wanted)?.[1] ?? '1');
  }

  /** Decides about a deviation, inspects, or signs: as somebody else where the mechanic may not. */
  private async close(): Promise<void> {
    const form = this.page.locator('.closing');
    const mechanic = /The mechanic signs: (.+)/.exec(await form.innerText())?.[1]?.trim();
    await form
      .locator('input')
      .first()
      .fill(mechanic ?? 'Q. Invented');
    const twice = form.getByRole('button', { name: /twice to sign/ });
    if ((await twice.count()) === 0)
      return this.grows(() => form.getByRole('button', { name: /^(repaired|Passed)$/ }).click());
    await twice.click();
    await this.page.waitForTimeout(600);
    await this.grows(() => form.getByRole('button', { name: 'Press once more to sign' }).click());
  }

  private async grows(action: () => Promise<void>): Promise<void> {
    await this.page.waitForTimeout(SETTLE + 50);
    const before = await this.heardCount();
    await action();
    await this.tookIn(before, 'the input', action);
  }

  /** Whether what warns was not heard or read yet when something came in. */
  isTooSoon(): Promise<boolean> {
    return this.page.locator('.unheard').isVisible();
  }

  /** The clock of the page, by so many milliseconds, as if nothing had been done meanwhile. */
  putAhead(ms: number): Promise<void> {
    return this.page.evaluate((ahead) => {
      const now = performance.now.bind(performance);
      performance.now = () => now() + ahead;
    }, ms);
  }

  /** @param again does it once more, where it came too soon */
  private async tookIn(before: number, what: string, again?: () => Promise<void>): Promise<void> {
    const end = Date.now() + PATIENCE;
    while ((await this.heardCount()) <= before) {
      if (again && (await this.isTooSoon())) {
        if (this.reads === 'at once') await this.putAhead(LONGEST);
        else await this.page.waitForTimeout(BREATH);
        await again();
      }
      if (Date.now() > end) throw new Unnoticed(`The app took no notice of ${what}. It shows: ${await this.wanted()}`);
      await this.page.waitForTimeout(50);
    }
  }

  /** What stands large on the work screen. */
  wanted(): Promise<string> {
    return this.page.locator('.wanted').innerText();
  }

  /**
   * The record on disk, as the browser keeps it: of the session on screen, where there is one. A test that is tried once more
   * finds those of its first try beside it.
   */
  async entries(): Promise<readonly Entry[]> {
    const shown = decodeURIComponent(this.page.url().split('/').at(-1) ?? '');
    const all = await this.allEntries();
    const ofShown = all.filter(({ session }) => session === shown);
    return ofShown.length > 0 ? ofShown : all;
  }

  /** Of every session on this device. */
  allEntries(): Promise<readonly Entry[]> {
    return this.page.evaluate(
      () =>
        new Promise<Entry[]>((resolve, reject) => {
          const opening = indexedDB.open('bothhands-record');
          opening.onerror = () => reject(new Error('There is no record.'));
          opening.onsuccess = () => {
            const all = opening.result.transaction('entries').objectStore('entries').getAll();
            all.onsuccess = () => {
              opening.result.close();
              resolve(all.result as Entry[]);
            };
          };
        }),
    );
  }
}

/** The bodies of one kind, in the order of the record. */
export const ofKind = <Kind extends EventBody['kind']>(
  entries: readonly Entry[],
  kind: Kind,
): readonly (Entry & { readonly body: Extract<EventBody, { kind: Kind }> })[] =>
  entries.filter(
    (entry): entry is Entry & { readonly body: Extract<EventBody, { kind: Kind }> } => entry.body.kind === kind,
  );
