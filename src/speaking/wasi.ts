/**
 * As much of WASI preview 1 as a program needs that takes arguments, writes one file and ends.
 * Source of names and numbers: WASI snapshot preview 1, "wasi_snapshot_preview1.witx".
 */
import { createMemoryFile, type MemoryFile } from './memory-file.ts';

export interface CommandResult {
  /** What the program wrote into the one file it opened; empty when it opened none. */
  readonly file: Uint8Array<ArrayBuffer>;
  /** What it wrote to standard output and standard error. */
  readonly messages: string;
}

const ERRNO = { success: 0, badFileDescriptor: 8, invalid: 28, noEntry: 44, notCapable: 76 } as const;
const FILE_TYPE = { characterDevice: 2, directory: 3, regularFile: 4 } as const;
const ALL_RIGHTS = 0xffff_ffff_ffff_ffffn;
const OPEN_CREATE = 1;
const WHENCE = { set: 0, current: 1, end: 2 } as const;

const STANDARD_INPUT = 0;
const STANDARD_ERROR = 2;
/** The program may open files in this directory only; it is the first descriptor after the standard three. */
const ROOT_DIRECTORY = 3;
const ROOT_NAME = new TextEncoder().encode('/');
const FIRST_FILE = 4;

/** Thrown through the program's own frames when it ends itself. */
class ProgramExit extends Error {
  constructor(readonly code: number) {
    super(`exit ${code}`);
  }
}

/**
 * Runs a WASI command once, from its start to its end, and returns what it wrote.
 * The clock stands still and there is no input: the same module and arguments give the same bytes.
 * @param args the argument vector, the program's own name first.
 * @throws Error with the program's messages when it exits with a code other than 0, or traps.
 */
export function runCommand(module: WebAssembly.Module, args: readonly string[]): CommandResult {
  const program = createProgram(args);
  const { exports } = new WebAssembly.Instance(module, { wasi_snapshot_preview1: program.imports });
  if (!(exports.memory instanceof WebAssembly.Memory) || typeof exports._start !== 'function')
    throw new Error('The module is not a WASI command: it exports no memory or no _start.');
  program.use(exports.memory);
  const start: () => void = exports._start as () => void;

  let code = 0;
  try {
    start();
  } catch (error) {
    if (!(error instanceof ProgramExit)) throw error;
    code = error.code;
  }
  if (code !== 0) throw new Error(`${args[0] ?? 'The program'} ended with code ${code}: ${program.messages()}`);
  return { file: program.output.bytes(), messages: program.messages() };
}

/**
 * What a program sees: the functions it imports, and the file and messages they fill. Give it its memory with `use`
 * before it calls out.
 */
export function createProgram(args: readonly string[]) {
  const encodedArgs = args.map((arg) => new TextEncoder().encode(`${arg}\0`));
  const output: MemoryFile = createMemoryFile();
  /** Where each open file descriptor stands in the output file. */
  const positions = new Map<number, number>();
  const decoder = new TextDecoder();
  let messages = '';
  let memory: WebAssembly.Memory | undefined;

  // The memory's buffer is replaced whenever it grows, so views are made anew for each call.
  function view(): DataView {
    if (!memory) throw new Error('The program called out before it was started.');
    return new DataView(memory.buffer);
  }
  const bytesAt = (pointer: number, length: number): Uint8Array => new Uint8Array(view().buffer, pointer, length);

  function fileType(descriptor: number): number | undefined {
    if (descriptor <= STANDARD_ERROR) return FILE_TYPE.characterDevice;
    if (descriptor === ROOT_DIRECTORY) return FILE_TYPE.directory;
    return positions.has(descriptor) ? FILE_TYPE.regularFile : undefined;
  }

  /** The byte ranges of a scatter/gather list: pairs of pointer and length. */
  function* ranges(list: number, count: number): Generator<Uint8Array> {
    for (let i = 0; i < count; i++)
      yield bytesAt(view().getUint32(list + i * 8, true), view().getUint32(list + i * 8 + 4, true));
  }

  function write(descriptor: number, bytes: Uint8Array): void {
    const position = positions.get(descriptor);
    if (position === undefined) messages += decoder.decode(bytes, { stream: true });
    else {
      output.write(position, bytes);
      positions.set(descriptor, position + bytes.length);
    }
  }

  const imports = {
    args_sizes_get(countPointer: number, sizePointer: number): number {
      view().setUint32(countPointer, encodedArgs.length, true);
      view().setUint32(
        sizePointer,
        encodedArgs.reduce((total, arg) => total + arg.length, 0),
        true,
      );
      return ERRNO.success;
    },

    args_get(vectorPointer: number, textPointer: number): number {
      let text = textPointer;
      encodedArgs.forEach((arg, i) => {
        view().setUint32(vectorPointer + i * 4, text, true);
        bytesAt(text, arg.length).set(arg);
        text += arg.length;
      });
      return ERRNO.success;
    },

    clock_time_get(_clock: number, _precision: bigint, timePointer: number): number {
      view().setBigUint64(timePointer, 0n, true);
      return ERRNO.success;
    },

    fd_close(descriptor: number): number {
      if (fileType(descriptor) === undefined) return ERRNO.badFileDescriptor;
      positions.delete(descriptor);
      return ERRNO.success;
    },

    fd_fdstat_get(descriptor: number, statPointer: number): number {
      const type = fileType(descriptor);
      if (type === undefined) return ERRNO.badFileDescriptor;
      view().setUint8(statPointer, type);
      view().setUint16(statPointer + 2, 0, true);
      view().setBigUint64(statPointer + 8, ALL_RIGHTS, true);
      view().setBigUint64(statPointer + 16, ALL_RIGHTS, true);
      return ERRNO.success;
    },

    fd_fdstat_set_flags(descriptor: number, _flags: number): number {
      return fileType(descriptor) === undefined ? ERRNO.badFileDescriptor : ERRNO.success;
    },

    fd_prestat_get(descriptor: number, prestatPointer: number): number {
      if (descriptor !== ROOT_DIRECTORY) return ERRNO.badFileDescriptor;
      view().setUint8(prestatPointer, 0);
      view().setUint32(prestatPointer + 4, ROOT_NAME.length, true);
      return ERRNO.success;
    },

    fd_prestat_dir_name(descriptor: number, namePointer: number, length: number): number {
      if (descriptor !== ROOT_DIRECTORY) return ERRNO.badFileDescriptor;
      bytesAt(namePointer, length).set(ROOT_NAME.subarray(0, length));
      return ERRNO.success;
    },

    /** Standard input is empty; nothing else can be read. */
    fd_read(descriptor: number, _list: number, _count: number, readPointer: number): number {
      if (descriptor !== STANDARD_INPUT) return ERRNO.badFileDescriptor;
      view().setUint32(readPointer, 0, true);
      return ERRNO.success;
    },

    fd_seek(descriptor: number, offset: bigint, whence: number, positionPointer: number): number {
      const position = positions.get(descriptor);
      if (position === undefined) return ERRNO.badFileDescriptor;
      const base = { [WHENCE.set]: 0, [WHENCE.current]: position, [WHENCE.end]: output.length() }[whence];
      if (base === undefined || base + Number(offset) < 0) return ERRNO.invalid;
      positions.set(descriptor, base + Number(offset));
      view().setBigUint64(positionPointer, BigInt(base + Number(offset)), true);
      return ERRNO.success;
    },

    fd_write(descriptor: number, list: number, count: number, writtenPointer: number): number {
      const type = fileType(descriptor);
      if (type === undefined || type === FILE_TYPE.directory || descriptor === STANDARD_INPUT)
        return ERRNO.badFileDescriptor;
      let written = 0;
      for (const bytes of ranges(list, count)) {
        write(descriptor, bytes);
        written += bytes.length;
      }
      view().setUint32(writtenPointer, written, true);
      return ERRNO.success;
    },

    /** Every path names the one output file. A file that is only to be read does not exist. */
    path_open(
      directory: number,
      _lookup: number,
      _path: number,
      _pathLength: number,
      openFlags: number,
      _rights: bigint,
      _inheritedRights: bigint,
      _flags: number,
      descriptorPointer: number,
    ): number {
      if (directory !== ROOT_DIRECTORY) return ERRNO.badFileDescriptor;
      if (!(openFlags & OPEN_CREATE)) return ERRNO.noEntry;
      if (positions.size > 0) return ERRNO.notCapable;
      positions.set(FIRST_FILE, 0);
      view().setUint32(descriptorPointer, FIRST_FILE, true);
      return ERRNO.success;
    },

    proc_exit(code: number): never {
      throw new ProgramExit(code);
    },
  };

  return {
    imports,
    output,
    messages: () => messages,
    use: (its: WebAssembly.Memory) => void (memory = its),
  };
}
