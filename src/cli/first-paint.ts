import { createHash } from 'node:crypto';
import type { Plugin } from 'vite';

/**
 * What stands in the page itself, so that the words in index.html can be read before any other file has come. The colours
 * are those of style.css, which replaces all of this.
 */
const STYLE = [
  ':root{font:18px/1.35 system-ui,sans-serif}',
  'body{margin:0;background:#f6f3ea;color:#14201d}',
  '.opening{padding:2rem;display:grid;gap:1.5rem}',
  '.opening p{margin:0}',
  '@media(prefers-color-scheme:dark){body{background:#101817;color:#f4f1e8}}',
].join('');

/** As a source in a content security policy: this style, and no other, may stand in the page. */
export const FIRST_STYLE_SOURCE = `'sha256-${createHash('sha256').update(STYLE).digest('base64')}'`;

const STYLESHEETS = /<link rel="stylesheet"[^>]*>/g;

/** Vite plugin: a stylesheet in the head would hold the first paint back until it has come, so it goes to the end. */
export function firstPaint(): Plugin {
  return {
    name: 'bothhands-first-paint',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler: (html) => {
        const links = html.match(STYLESHEETS) ?? [];
        return html
          .replace(STYLESHEETS, '')
          .replace('</head>', `<style>${STYLE}</style></head>`)
          .replace('</body>', `${links.join('')}</body>`);
      },
    },
  };
}
