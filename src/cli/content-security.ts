import type { Plugin } from 'vite';
import { FIRST_STYLE_SOURCE } from './first-paint.ts';

/** What pages of Bothhands may load and where they may connect: nothing leaves the origin. */
export const PAGE_POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  `style-src 'self' ${FIRST_STYLE_SOURCE}`,
  "img-src 'self' data:",
  "media-src 'self' blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** The recogniser's worker builds its bindings with `new Function` (embind), so its own file, and only that, may. */
export const RECOGNISER_WORKER_POLICY =
  "default-src 'none'; script-src 'self' 'unsafe-eval' 'wasm-unsafe-eval'; connect-src 'self'";

const isRecogniserWorker = (pathname: string): boolean => /\/vosk\.worker-[^/]+\.js$/.test(pathname);

/** Response headers for a file of the build. A header also carries `frame-ancestors`, which a meta tag cannot. */
export function headersFor(pathname: string): Record<string, string> {
  return {
    'content-security-policy': isRecogniserWorker(pathname)
      ? RECOGNISER_WORKER_POLICY
      : `${PAGE_POLICY}; frame-ancestors 'none'`,
    'permissions-policy': 'microphone=(self), camera=(self), screen-wake-lock=(self)',
    'referrer-policy': 'no-referrer',
    'x-content-type-options': 'nosniff',
    'cross-origin-opener-policy': 'same-origin',
    'cache-control': pathname.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
  };
}

/** Vite plugin: the built page carries the policy itself too, so that any static host serves it. */
export function contentSecurity(): Plugin {
  return {
    name: 'bothhands-content-security',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: PAGE_POLICY },
        injectTo: 'head-prepend',
      },
    ],
  };
}
