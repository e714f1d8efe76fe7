/** Breaks a file below its meaning: bytes, encodings, length, and tokens that only look like values. */
import type { SeededRandom } from "@/lib/base/seeded-random";
import { ODD_TEXTS, ODD_TOKENS } from "@/tests/fuzz/odd-values";

const toBytes = (text: string) => new TextEncoder().encode(text);

function splice(bytes: Uint8Array, from: number, to: number, middle: Uint8Array): Uint8Array {
  return new Uint8Array(Buffer.concat([bytes.subarray(0, from), middle, bytes.subarray(to)]));
}

function flip(bytes: Uint8Array, random: SeededRandom): Uint8Array {
  const copy = bytes.slice();
  for (let left = 1 + random.int(8); left > 0 && copy.length > 0; left -= 1) {
    copy[random.int(copy.length)] = random.int(256);
  }
  return copy;
}

function toUtf16(bytes: Uint8Array, isBig: boolean): Uint8Array {
  const little = Buffer.from(`\uFEFF${Buffer.from(bytes).toString("utf8")}`, "utf16le");
  return new Uint8Array(isBig ? little.swap16() : little);
}

/** A number of the text stands as something that is none. */
function changeToken(bytes: Uint8Array, random: SeededRandom): Uint8Array {
  const text = Buffer.from(bytes).toString("utf8");
  const numbers = [...text.matchAll(/-?\d+(\.\d+)?/g)];
  if (numbers.length === 0) return flip(bytes, random);
  const { index, 0: found } = random.pick(numbers);
  return toBytes(text.slice(0, index) + random.pick(ODD_TOKENS) + text.slice(index + found.length));
}

const BRACKETS = [1_000, 200_000];

/** JSON all the same, and deeper than any reader's stack that goes down level by level. */
export function deepen(bytes: Uint8Array, random: SeededRandom): Uint8Array {
  const depth = random.pick(BRACKETS);
  const text = Buffer.from(bytes).toString("utf8");
  const nest = random.chance(0.5)
    ? "[".repeat(depth) + "]".repeat(depth)
    : `${'{"a":'.repeat(depth)}1${"}".repeat(depth)}`;
  const places = [...text.matchAll(/(?<=[:[,]\s*)-?\d+(\.\d+)?/g)];
  if (places.length === 0) return toBytes(nest);
  const { index, 0: found } = random.pick(places);
  return toBytes(text.slice(0, index) + nest + text.slice(index + found.length));
}

/** A broken copy of the bytes. */
export function mutateBytes(bytes: Uint8Array, random: SeededRandom): Uint8Array {
  const at = random.int(bytes.length + 1);
  const end = Math.min(bytes.length, at + random.int(40));
  const ways: (() => Uint8Array)[] = [
    () => flip(bytes, random),
    () => bytes.slice(0, at),
    () => splice(bytes, at, end, new Uint8Array()),
    () => splice(bytes, at, at, toBytes(random.pick(ODD_TEXTS))),
    () => splice(bytes, at, at, bytes.slice(at, end)),
    () => splice(bytes, 0, 0, new Uint8Array([0xef, 0xbb, 0xbf])),
    () => toUtf16(bytes, random.chance(0.5)),
    () => new Uint8Array(Buffer.from(Buffer.from(bytes).toString("utf8"), "latin1")),
    () => splice(bytes, at, at, new Uint8Array([random.pick([0x00, 0x80, 0xc0, 0xff])])),
    () => splice(bytes, at, at, toBytes(random.pick(["[", '{"a":']).repeat(random.pick(BRACKETS)))),
    () => changeToken(bytes, random),
    () => deepen(bytes, random),
    () => splice(bytes, bytes.length, bytes.length, bytes),
    () => new Uint8Array(),
  ];
  return random.pick(ways)();
}
