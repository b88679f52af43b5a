/** Canonical JSON (RFC 8785), over which everything in a record is hashed. */
import canonicalize from 'canonicalize';

/** Canonical JSON text of a value (RFC 8785). @throws where the value has no JSON form, such as NaN or a lone surrogate */
export function canonical(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError('Only a JSON value has a canonical form.');
  return text;
}

/**
 * Canonical JSON text of an entry without its `hash`: what the hash is over.
 * @param whole the canonical text of the entry with it, where that was made already: the member is cut out of it
 * @throws as `canonical` does
 */
export function canonicalContent(entry: object, whole = canonical(entry)): string {
  const { hash, ...content } = entry as { readonly hash?: unknown };
  if (typeof hash !== 'string' || !HASH.test(hash)) return canonical(content);
  const member = `"hash":"${hash}"`;
  const [before, behind, ...more] = whole.split(member);
  // Where it stands once it is the entry's own: quotes inside a text have a backslash before them.
  return behind?.startsWith(',') && more.length === 0 ? `${before ?? ''}${behind.slice(1)}` : canonical(content);
}

const HASH = /^[0-9a-f]{64}$/;
