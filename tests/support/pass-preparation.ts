import type { Page } from 'playwright-core';

/**
 * Gets past the page before the work as somebody would for whom everything is in order, and in one go: a test that is about
 * that page does it by hand. To sound that is kept nobody agrees here. Labels are those of the file, and what expires holds long.
 */
export async function passPreparation(page: Page): Promise<void> {
  const main = page.locator('main.prepare');
  await main.waitFor();
  await main.evaluate((screen) => {
    for (const day of screen.querySelectorAll<HTMLInputElement>('[type="date"]')) {
      day.value = /by the file ([\d-]+)/.exec(day.closest('.thing')?.textContent ?? '')?.[1] ?? '2031-03-31';
      day.dispatchEvent(new InputEvent('input', { bubbles: true }));
    }
    for (const tick of screen.querySelectorAll<HTMLInputElement>('[type="checkbox"]:not(:checked, #sound)'))
      tick.click();
    screen.querySelector<HTMLInputElement>('#field-lift input[value="sling or hoist"]')?.click();
  });
  await page.getByRole('button', { name: /^Begin the work/ }).click();
  await page.locator('main.work').waitFor();
}
