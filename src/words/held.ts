/** While both hands carry. */
import { said } from './said.ts';

export const held = said('held', {
  heldFor: <T>(time: T) => ['Held ', time],
  held: 'Held',
  thenComes: (ahead: readonly string[]) =>
    `Then: ${ahead.join(', ')}. They come by themselves; next brings one at once. Say help to call the second person.`,
  setDown: 'Say set down when it is down. Say help to call the second person.',
});
