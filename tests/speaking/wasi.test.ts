import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createProgram, runCommand } from '../../src/speaking/wasi.ts';
import { loadFlite } from '../support/speech.ts';

// Numbers from WASI snapshot preview 1: errno and whence.
const SUCCESS = 0;
const BAD_FILE_DESCRIPTOR = 8;
const INVALID = 28;
const NO_ENTRY = 44;
const ROOT = 3;
const CREATE = 1;
const FROM_START = 0;

/** A program's side of the border, driven by hand: its memory, and calls that place their bytes in it. */
function bench(...args: string[]) {
  const program = createProgram(args);
  const memory = new WebAssembly.Memory({ initial: 4 });
  program.use(memory);
  const view = new DataView(memory.buffer);
  const open = (flags = CREATE): number => program.imports.path_open(ROOT, 0, 0, 0, flags, 0n, 0n, 0, 100);
  return {
    ...program,
    view,
    memory,
    open,
    openedDescriptor: () => (open(), view.getUint32(100, true)),
    write: (descriptor: number, bytes: Uint8Array): number => {
      new Uint8Array(memory.buffer).set(bytes, 1000);
      view.setUint32(0, 1000, true);
      view.setUint32(4, bytes.length, true);
      return program.imports.fd_write(descriptor, 0, 1, 8);
    },
  };
}

describe('the file a program writes', () => {
  test('holds what was written where it was written, whatever the order', () => {
    const chunk = fc.record({ at: fc.nat(200_000), bytes: fc.uint8Array({ minLength: 1, maxLength: 500 }) });
    fc.assert(
      fc.property(fc.array(chunk, { maxLength: 10 }), (chunks) => {
        const { imports, output, openedDescriptor, write } = bench();
        const descriptor = openedDescriptor();
        const expected = new Uint8Array(Math.max(0, ...chunks.map(({ at, bytes }) => at + bytes.length)));
        for (const { at, bytes } of chunks) {
          imports.fd_seek(descriptor, BigInt(at), FROM_START, 16);
          expect(write(descriptor, bytes)).toBe(SUCCESS);
          expected.set(bytes, at);
        }
        expect(Buffer.from(output.bytes()).equals(expected)).toBe(true);
      }),
    );
  });

  test('cannot be opened only to be read, since no file is there', () => {
    expect(bench().open(0)).toBe(NO_ENTRY);
  });

  test('is not moved before its start', () => {
    const { imports, openedDescriptor } = bench();
    expect(imports.fd_seek(openedDescriptor(), -1n, FROM_START, 16)).toBe(INVALID);
    expect(imports.fd_seek(openedDescriptor(), 0n, 7, 16)).toBe(INVALID);
  });
});

test('an unknown file descriptor is an error in every call', () => {
  const { imports, write, openedDescriptor } = bench();
  const closed = openedDescriptor();
  imports.fd_close(closed);
  for (const unknown of [closed, 9]) {
    expect(imports.fd_close(unknown)).toBe(BAD_FILE_DESCRIPTOR);
    expect(imports.fd_fdstat_get(unknown, 0)).toBe(BAD_FILE_DESCRIPTOR);
    expect(imports.fd_fdstat_set_flags(unknown, 0)).toBe(BAD_FILE_DESCRIPTOR);
    expect(imports.fd_prestat_get(unknown, 0)).toBe(BAD_FILE_DESCRIPTOR);
    expect(imports.fd_prestat_dir_name(unknown, 0, 1)).toBe(BAD_FILE_DESCRIPTOR);
    expect(imports.fd_read(unknown, 0, 0, 0)).toBe(BAD_FILE_DESCRIPTOR);
    expect(imports.fd_seek(unknown, 0n, FROM_START, 0)).toBe(BAD_FILE_DESCRIPTOR);
    expect(write(unknown, Uint8Array.of(1))).toBe(BAD_FILE_DESCRIPTOR);
  }
});

test('arguments arrive as they were given, each with its end mark', () => {
  const { imports, view, memory } = bench('flite', '-t', 'été');
  imports.args_sizes_get(0, 4);
  expect([view.getUint32(0, true), view.getUint32(4, true)]).toEqual([3, 6 + 3 + 6]);
  imports.args_get(8, 64);
  expect(new TextDecoder().decode(new Uint8Array(memory.buffer, 64, 15))).toBe('flite\0-t\0été\0');
  expect([8, 12, 16].map((at) => view.getUint32(at, true))).toEqual([64, 70, 73]);
});

test('a program that ends with a code other than 0 is an error that carries its messages', async () => {
  const module = await loadFlite();
  expect(() => runCommand(module, ['flite', '--version'])).toThrow(/^flite ended with code 1: [^]*version/);
});
