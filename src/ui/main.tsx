import { render } from 'solid-js/web';
import { App } from './app.tsx';
import { chooseWords } from './choose-words.ts';
import './style.css';

document.documentElement.lang = await chooseWords(navigator.languages);

const root = document.getElementById('app');
// What the page says while the program comes makes room for it.
root?.replaceChildren();
if (root) render(() => <App />, root);

// Without this promise a browser may throw the record away when the disk runs full.
void navigator.storage?.persist?.();
