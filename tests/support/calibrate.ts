import type { Page } from 'playwright-core';

const BANK_CARD = 53.98;

/** On the display page: lays a bank card against the screen, as a person does, and makes the bar as long as it is there. */
export async function calibrate(page: Page, pixelsPerMm: number): Promise<void> {
  await page.getByLabel('What is held against it').selectOption('the short side of a bank card');
  const left = async (): Promise<number> =>
    Math.round(pixelsPerMm * BANK_CARD - ((await page.locator('.bar').boundingBox())?.width ?? NaN));
  const press = async (name: string, times: number): Promise<void> => {
    for (let time = 0; time < times; time++) await page.getByRole('button', { name, exact: true }).click();
  };
  await press((await left()) > 0 ? 'Much longer' : 'Much shorter', Math.trunc(Math.abs(await left()) / 20));
  await press((await left()) > 0 ? 'Longer' : 'Shorter', Math.abs(await left()));
  await press('It is exactly as long now', 1);
}
