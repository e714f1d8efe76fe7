/**
 * Reads a zip as far as it can be trusted: its entries are inflated a little at a time and counted as they come, so
 * that a small file that would swell to a huge one is refused long before it has.
 */

import { Unzip, type UnzipFile, UnzipInflate, UnzipPassThrough } from "fflate";
import { AppError } from "@/lib/base/app-error";

export interface ZipLimits {
  readonly entries: number;
  /** Of one entry and of all together, inflated, bytes. */
  readonly entryBytes: number;
  readonly allBytes: number;
}

export interface ZipEntry {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Deflate swells at most 1032 times: no more than two megabytes can come of one step. */
const STEP_BYTES = 2048;

/** Signature of a local file header: what a zip with anything in it begins with. */
const LOCAL_HEADER = [0x50, 0x4b, 0x03, 0x04];

function refuse(path: string, message: string): AppError {
  return new AppError("bad-input", "The zip was refused; nothing was written.", [{ path, message }]);
}

/** Whether the bytes begin as a zip does. */
export function isZip(bytes: Uint8Array): boolean {
  return LOCAL_HEADER.every((byte, at) => bytes[at] === byte);
}

class Reader {
  private readonly chunks = new Map<string, Uint8Array[]>();
  private readonly open = new Set<string>();
  private all = 0;
  private failure: AppError | null = null;

  constructor(
    private readonly path: string,
    private readonly limits: ZipLimits,
  ) {}

  private fail(name: string, message: string): undefined {
    this.failure ??= refuse(`${this.path}/${name.slice(0, 120)}`, message);
    return undefined;
  }

  private take(file: UnzipFile, error: Error | null, chunk: Uint8Array | null, isLast: boolean): undefined {
    if (error !== null || chunk === null)
      return this.fail(file.name, "cannot be inflated: the zip is damaged");
    const list = this.chunks.get(file.name) ?? [];
    list.push(chunk);
    this.chunks.set(file.name, list);
    this.all += chunk.length;
    const own = list.reduce((sum, { length }) => sum + length, 0);
    if (own > this.limits.entryBytes) this.fail(file.name, `holds more than ${this.limits.entryBytes} bytes`);
    if (this.all > this.limits.allBytes)
      this.fail(file.name, `the zip holds more than ${this.limits.allBytes} bytes`);
    if (isLast) this.open.delete(file.name);
  }

  private begin(file: UnzipFile): undefined {
    if (this.chunks.has(file.name)) return this.fail(file.name, "stands in the zip twice");
    if (this.chunks.size >= this.limits.entries) {
      return this.fail(file.name, `the zip holds more than ${this.limits.entries} files`);
    }
    if (file.compression !== 0 && file.compression !== 8)
      return this.fail(file.name, "is packed in a way that is not read");
    this.chunks.set(file.name, []);
    this.open.add(file.name);
    file.ondata = (error, chunk, isLast) => this.take(file, error, chunk, isLast);
    file.start();
  }

  /** All entries, in order. */
  read(bytes: Uint8Array): ZipEntry[] {
    const unzip = new Unzip((file) => this.begin(file));
    unzip.register(UnzipInflate);
    unzip.register(UnzipPassThrough);
    for (let from = 0; from < bytes.length; from += STEP_BYTES) {
      try {
        unzip.push(bytes.subarray(from, from + STEP_BYTES), from + STEP_BYTES >= bytes.length);
      } catch {
        this.failure ??= refuse(this.path, "is damaged or no zip");
      }
      if (this.failure !== null) throw this.failure;
    }
    const [half] = this.open;
    if (half !== undefined) throw refuse(`${this.path}/${half}`, "is cut off: the zip is not whole");
    if (this.chunks.size !== readEntryCount(bytes))
      throw refuse(this.path, "is cut off: the zip is not whole");
    if (this.chunks.size === 0) throw refuse(this.path, "holds no file");
    return [...this.chunks].map(([name, list]) => ({ name, bytes: join(list) }));
  }
}

/** Signature of the record that ends a zip, its length without a comment, and where it counts the entries. */
const END_RECORD = [0x50, 0x4b, 0x05, 0x06];
const END_BYTES = 22;
const END_COUNT_AT = 10;
const MOST_COMMENT_BYTES = 65_535;

/** How many entries the zip's own end says that there are; null where it has no end. */
function readEntryCount(bytes: Uint8Array): number | null {
  const last = bytes.length - END_BYTES;
  for (let from = last; from >= Math.max(0, last - MOST_COMMENT_BYTES); from -= 1) {
    if (!END_RECORD.every((byte, at) => bytes[from + at] === byte)) continue;
    return (bytes[from + END_COUNT_AT] ?? 0) + 256 * (bytes[from + END_COUNT_AT + 1] ?? 0);
  }
  return null;
}

function join(chunks: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

/**
 * The entries of a zip, inflated, folders left out. Throws AppError `bad-input`, with `path` and the entry's name, for
 * what is no zip or is damaged or cut off, a repeated name, and more entries or bytes than the limits allow; nothing
 * much beyond a limit is ever inflated.
 */
export function readZip(bytes: Uint8Array, path: string, limits: ZipLimits): ZipEntry[] {
  if (!isZip(bytes)) throw refuse(path, "is no zip");
  return new Reader(path, limits).read(bytes).filter(({ name }) => !name.endsWith("/"));
}
