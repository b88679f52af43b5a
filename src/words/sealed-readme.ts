/** What is said about the format in each sealed file, for whoever has the file and not the program. */
import { said } from './said.ts';

export const sealedReadme = said('sealedReadme', {
  text: `A session of Bothhands, sealed. Format version 2.

This is a zip archive. Its parts are stored, not compressed, in this order:

format.json     the name and version of this format, and the session.
README.txt      this text.
entries.jsonl   the record: one entry a line, as canonical JSON (RFC 8785), in UTF-8, lines ended by a line feed.
procedure.json  a copy of the procedure that was worked by, for reading. The record itself holds it in its first entry.
seal.jws        the seal.
evidence/       sounds around readings, where everybody agreed to that: WAV files, named by their SHA-256.

An entry says what happened ("body"), when ("at": UTC, and milliseconds since the page began), by whom, through what, and
what was heard. "hash" is the SHA-256 of the canonical JSON of the entry without "hash". "prev" is the hash of the entry
before; 64 zeros in the first. "seq" counts from 0. Nothing is erased: a correction is an entry of its own.
"heard" may name a sound: its SHA-256 ("sha256"), its length, and when it was taken. The sound may be deleted later: then
an entry says so, its hash stays, and the record is as whole as before. A sound that is there must have its hash.

The seal is a JSON Web Signature (RFC 7515) in compact form, by ES256. Its header holds the public key ("jwk") and the
key's thumbprint (RFC 7638, "kid"). Its payload states: the session, the number of entries, the hash of the last one
("head"), the Merkle root over all ("root": RFC 6962, the leaves are the 32 bytes of each hash), the SHA-256 of the
canonical JSON of the procedure, the program that sealed, when it did, and when the work was closed (null: it was under
way). Seals of version 1 do not say when they were made. When is by the clock of the device: a time-stamp proves more.

A record is intact when every hash fits, every "prev" fits, the numbers leave nothing out, and the seal fits them all.
A seal shows that nothing was changed since it was made. Whose key made it, it cannot show: compare the thumbprint with
the one that was noted of the device.

The approved manual, local rules and licensed people decide. This record says what was done; it approves nothing.
`,
});
