import { render } from 'solid-js/web';

const root = document.getElementById('app');
if (root) render(() => <h1>Bothhands</h1>, root);
