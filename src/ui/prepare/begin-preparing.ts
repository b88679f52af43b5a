import { enteredNothing } from '../../session/preparation/entered.ts';
import type { PreparationDraft } from '../../storage/preparation-draft.ts';
import type { Shop } from '../app.tsx';
import { today } from '../clock.ts';
import { go } from '../router.ts';

/** Leads to what is looked at before the work: with this procedure, for whom the start screen names. */
export function beginPreparing(shop: Shop, procedure: Pick<PreparationDraft, 'text' | 'file' | 'sound'>): void {
  const { mechanic, second } = shop.settings;
  shop.setPreparation({ ...procedure, day: today(), entered: enteredNothing(mechanic, second) });
  go({ kind: 'prepare' });
}
