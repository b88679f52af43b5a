import type { Page } from 'playwright-core';
import { SETTLE } from '../../ui/settle.ts';

const PATIENCE = 30_000;

/** Goes through the app as a person does who taps and types; of no test, since it looks at nothing. */
export class Walker {
  constructor(
    readonly page: Page,
    readonly url: string,
  ) {}

  /** A place by its address: '/editor'. */
  async at(address: string): Promise<void> {
    await this.page.evaluate((hash) => (location.hash = hash), `#${address}`);
    await this.page.locator('main:not(.opening)').waitFor();
  }

  async tap(name: string | RegExp): Promise<void> {
    await this.logs(() => this.page.getByRole('button', { name, exact: true }).first().click());
  }

  async type(line: string): Promise<void> {
    await this.page.getByLabel('Type what you would say').fill(line);
    await this.logs(() => this.page.keyboard.press('Enter'));
  }

  /** Everything on the page before the work is there and in order. */
  async prepare(): Promise<void> {
    const main = this.page.locator('main.prepare');
    await main.waitFor();
    await main.evaluate((screen) => {
      for (const day of screen.querySelectorAll<HTMLInputElement>('[type="date"]')) {
        day.value = '2099-12-31';
        day.dispatchEvent(new InputEvent('input', { bubbles: true }));
      }
      for (const tick of screen.querySelectorAll<HTMLInputElement>('[type="checkbox"]:not(:checked, #sound)'))
        tick.click();
      screen.querySelector<HTMLInputElement>('#field-lift input[value="sling or hoist"]')?.click();
    });
  }

  /** Does something, and waits until it is written. */
  async logs(action: () => Promise<void>): Promise<void> {
    // What comes sooner than a person can have looked is not taken.
    await this.page.waitForTimeout(SETTLE + 50);
    const before = await this.logged();
    await action();
    const end = Date.now() + PATIENCE;
    while ((await this.logged()) === before) {
      if (Date.now() > end)
        throw new Error(`Nothing was written. It shows: ${await this.page.locator('.wanted').innerText()}`);
      // What warns is read first.
      if (await this.page.locator('.unheard').isVisible()) {
        await this.page.waitForTimeout(SETTLE + 50);
        await action();
      }
      await this.page.waitForTimeout(50);
    }
  }

  private logged = (): Promise<string> => this.page.locator('.lines .logged').innerText();
}
