import { minify, type JsMinifyOptions } from '@swc/core';
import type { Plugin } from 'vite';

const OPTIONS = {
  module: true,
  ecma: 2022,
  toplevel: true,
  // Again and again, until nothing more can be shortened. What is called has no use for arguments that it does not name.
  compress: { ecma: 2022, module: true, toplevel: true, passes: 3, keep_fargs: false },
  mangle: { toplevel: true },
  format: { ecma: 2022, comments: false },
} satisfies JsMinifyOptions;

/** Vite plugin: shortens scripts of the build, before the bundler does: what both leave is a hundredth smaller. */
export function shorten(): Plugin {
  return {
    name: 'bothhands-shorten',
    apply: 'build',
    enforce: 'post',
    async renderChunk(code) {
      return { code: (await minify(code, OPTIONS)).code, map: null };
    },
  };
}
