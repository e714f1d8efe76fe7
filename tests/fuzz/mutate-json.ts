/** Breaks a JSON value: structure (keys, places, depth) or single values, as a seeded generator says. */
import type { SeededRandom } from "@/lib/base/seeded-random";
import { ODD_NUMBERS, ODD_TEXTS } from "@/tests/fuzz/odd-values";

type Holder = Record<string, unknown>;

interface Slot {
  readonly holder: Holder;
  readonly key: string;
}

function listSlots(value: unknown, slots: Slot[] = []): Slot[] {
  if (typeof value !== "object" || value === null) return slots;
  for (const key of Object.keys(value)) {
    slots.push({ holder: value as Holder, key });
    listSlots((value as Holder)[key], slots);
  }
  return slots;
}

/** A property of the object itself, whatever it is called: `__proto__` too. */
function put(holder: Holder, key: string, value: unknown): void {
  Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true });
}

const DEPTHS = [2, 50, 2_000];

function nest(depth: number, asList: boolean): unknown {
  let value: unknown = asList ? [] : {};
  for (let level = 0; level < depth; level += 1) value = asList ? [value] : { a: value };
  return value;
}

function drawValue(random: SeededRandom): unknown {
  const kinds: (() => unknown)[] = [
    () => random.pick(ODD_TEXTS),
    () => random.pick(ODD_NUMBERS),
    () => random.pick([null, true, false]),
    () => nest(random.pick(DEPTHS), random.chance(0.5)),
    () => random.pick([[], {}, [[]], [null], { kind: "dot" }, { length: 3 }]),
  ];
  return random.pick(kinds)();
}

/** One slot's value is another: an odd one of any type, or a number moved a little or a lot. */
function changeValue({ holder, key }: Slot, random: SeededRandom): void {
  const value = holder[key];
  if (typeof value === "number" && random.chance(0.6)) {
    put(holder, key, random.pick([-value, value * 1.01, value + 0.01, value * 1e6, Math.round(value)]));
  } else if (typeof value === "string" && random.chance(0.5)) {
    put(holder, key, random.pick([`${value} `, value.toUpperCase(), value.slice(1), random.pick(ODD_TEXTS)]));
  } else put(holder, key, drawValue(random));
}

function repeat({ holder, key }: Slot): void {
  const value = holder[key];
  if (Array.isArray(holder)) holder.splice(Number(key), 0, structuredClone(value));
  else put(holder, `${key}2`, structuredClone(value));
}

function drop({ holder, key }: Slot): void {
  if (Array.isArray(holder)) holder.splice(Number(key), 1);
  else delete holder[key];
}

function swap({ holder, key }: Slot, other: Slot): void {
  const value = holder[key];
  put(holder, key, structuredClone(other.holder[other.key]));
  put(other.holder, other.key, structuredClone(value));
}

/** A key too many, among them those that every object has. */
function addKey({ holder }: Slot, random: SeededRandom): void {
  if (Array.isArray(holder)) holder.push(drawValue(random));
  else put(holder, random.pick(["extra", "__proto__", "constructor", "toString", ""]), drawValue(random));
}

function changeStructure(slots: readonly Slot[], random: SeededRandom): void {
  const slot = random.pick(slots);
  const ways = [
    () => repeat(slot),
    () => drop(slot),
    () => swap(slot, random.pick(slots)),
    () => addKey(slot, random),
    () => put(slot.holder, slot.key, [slot.holder[slot.key]]),
    () => put(slot.holder, slot.key, nest(random.pick(DEPTHS), random.chance(0.5))),
  ];
  random.pick(ways)();
}

/** A broken copy: one or two changes of the kind. The value itself stays as it is. */
export function mutateJson(value: unknown, kind: "structure" | "value", random: SeededRandom): unknown {
  const copy = structuredClone(value);
  for (let left = 1 + random.int(2); left > 0; left -= 1) {
    const slots = listSlots(copy);
    if (slots.length === 0) break;
    if (kind === "structure") changeStructure(slots, random);
    else changeValue(random.pick(slots), random);
  }
  return copy;
}
