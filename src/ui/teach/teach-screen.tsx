import { createSignal, onMount, untrack, type JSX } from 'solid-js';
import { tidyName } from '../../session/people.ts';
import { teachScreen } from '../../words/teach-screen.ts';
import type { Shop } from '../app.tsx';
import { BackLink } from '../parts/way-back.tsx';
import { CameraSection } from './camera-section.tsx';
import { SwitchesSection } from './switches-section.tsx';
import { TouchSection } from './touch-section.tsx';

/** Where each person teaches switches, touch and camera, and tries them. It stays on the device. */
export function TeachScreen(props: { readonly shop: Shop; readonly session: string | null }): JSX.Element {
  const [person, setPerson] = createSignal(untrack(() => props.shop.settings.mechanic));
  const name = (): string => tidyName(person());
  let main: HTMLElement | undefined;
  onMount(() => main?.focus());
  return (
    <main class="teach" ref={main} tabindex="-1">
      <header>
        <h1>{teachScreen.title}</h1>
        <p>{teachScreen.scope}</p>
      </header>
      <label class="person">
        {teachScreen.forWhom}
        <input value={person()} autocomplete="name" onInput={(event) => setPerson(event.currentTarget.value)} />
      </label>
      <SwitchesSection shop={props.shop} person={name()} />
      <TouchSection shop={props.shop} person={name()} />
      <CameraSection shop={props.shop} person={name()} />
      <p>
        <BackLink session={props.session} />
      </p>
    </main>
  );
}
