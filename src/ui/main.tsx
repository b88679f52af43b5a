import { render } from 'solid-js/web';
import { registerSW } from 'virtual:pwa-register';
import { App } from './app.tsx';
import './style.css';

const root = document.getElementById('app');
// What the page says while the program comes makes room for it.
root?.replaceChildren();
if (root) render(() => <App />, root);

// A new version waits until the app is started afresh: nothing changes under a job.
registerSW({ immediate: true });
// Without this promise a browser may throw the record away when the disk runs full.
void navigator.storage?.persist?.();
