import type { Plugin } from 'vite';

/** A place in a library, and what stands there in the build. */
interface Cut {
  /** The end of the file's name. */
  readonly file: string;
  readonly place: RegExp;
  readonly instead: string;
}

/** Set only while a page that a server has drawn is taken over. This app draws its pages itself. */
const TAKEN_OVER = /\bsharedConfig\.(?:context|effects|events|load|registry)\b(?! =)/g;

const CUTS: readonly Cut[] = [
  // The parts of a sealed file are stored, never compressed (src/record/container.ts). Who asks for it all the same is refused.
  {
    file: '/fflate/esm/browser.js',
    place: /compression \? deflateSync\(file, p\) :/g,
    instead: 'compression ? err(14) :',
  },
  // What compression is reckoned with: filled by loops, so that the bundler keeps it.
  { file: '/fflate/esm/browser.js', place: /\/\/ fixed length extra bits[^]*(?=\/\/ find max of array)/g, instead: '' },
  // Set only by transitions.
  { file: '/solid-js/dist/solid.js', place: /\bTransition\b(?! =)/g, instead: '(null)' },
  { file: '/solid-js/dist/solid.js', place: TAKEN_OVER, instead: '(void 0)' },
  { file: '/solid-js/web/dist/web.js', place: TAKEN_OVER, instead: '(void 0)' },
  // Seals are made and checked by ES256 alone, which takes keys of one kind (src/record/seal.ts). All others are refused.
  {
    file: '/jose/dist/webapi/lib/jws_algorithms.js',
    place: /^ {2}(?:[HPR]S\d+|ES(?:384|512)|EdDSA|Ed25519|"ML-DSA-\d+"): .*\n/gm,
    instead: '',
  },
  {
    file: '/jose/dist/webapi/jwk/thumbprint.js',
    place: /^ {4}case "(?:AKP|OKP|RSA|oct)":\n[^]*?(?=^ {4}(?:case|default))/gm,
    instead: '',
  },
];

/** What would reach parts that are left out. */
const NOT_FOR_USE = /\b(?:startTransition|useTransition|hydrate)\b/;

/**
 * Vite plugin, for the pages: tells the bundler of libraries what it cannot find out, so that what is never reached here is
 * left out. The build stops where a library no longer has such a file or such a place in it, or where a source reaches for
 * what is left out.
 */
export function leaveOut(): Plugin {
  const seen = new Set<string>();
  return {
    name: 'bothhands-leave-out',
    apply: 'build',
    enforce: 'pre',
    buildStart() {
      seen.clear();
    },
    transform(code, id) {
      // Libraries have sources too, and the project may lie below another folder of that name.
      if (id.includes('/src/') && !id.includes('/node_modules/') && NOT_FOR_USE.test(code))
        this.error(`What ${NOT_FOR_USE.source} needs is left out of the build by src/cli/leave-out.ts.`);
      const cuts = CUTS.filter(({ file }) => id.endsWith(file));
      if (cuts.length === 0) return null;
      for (const { file, place } of cuts) {
        if (code.search(place) < 0) this.error(`${file} has no ${place.source} any more: see src/cli/leave-out.ts.`);
        seen.add(file);
      }
      return { code: cuts.reduce((text, { place, instead }) => text.replaceAll(place, instead), code), map: null };
    },
    buildEnd(failed) {
      const missing = CUTS.find(({ file }) => !seen.has(file));
      if (!failed && missing) this.error(`${missing.file} is not in the build any more: see src/cli/leave-out.ts.`);
    },
  };
}
