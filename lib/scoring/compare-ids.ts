const isDigit = (code: number) => code >= 48 && code <= 57;

/** The end of the run of digits that starts at `from`. */
function findDigitsEnd(text: string, from: number): number {
  let end = from;
  while (end < text.length && isDigit(text.charCodeAt(end))) end += 1;
  return end;
}

/**
 * The order of ids, by which every tie of the engine is broken: runs of digits by their number ("m2" before
 * "m10"), all else by code unit. A total order: 0 only for equal ids, whatever the order in which they were given.
 */
export function compareIds(a: string, b: string): number {
  let i = 0;
  let j = 0;
  while (i < a.length && j < b.length) {
    const [x, y] = [a.charCodeAt(i), b.charCodeAt(j)];
    if (isDigit(x) && isDigit(y)) {
      const [endA, endB] = [findDigitsEnd(a, i), findDigitsEnd(b, j)];
      const difference = Number(a.slice(i, endA)) - Number(b.slice(j, endB));
      if (difference !== 0) return difference;
      [i, j] = [endA, endB];
    } else {
      if (x !== y) return x - y;
      i += 1;
      j += 1;
    }
  }
  const rest = a.length - i - (b.length - j);
  if (rest !== 0) return rest;
  return a === b ? 0 : a < b ? -1 : 1;
}
