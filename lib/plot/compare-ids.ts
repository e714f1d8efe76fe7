const isDigit = (code: number) => code >= 48 && code <= 57;

/**
 * The order of ids, by which every tie of the engine is broken: runs of digits by their number ("m2" before
 * "m10"), all else by code unit. A total order: 0 only for equal ids, whatever the order in which they were given.
 */
export function compareIds(a: string, b: string): number {
  let i = 0;
  let j = 0;
  while (i < a.length && j < b.length) {
    const x = a.charCodeAt(i);
    const y = b.charCodeAt(j);
    if (isDigit(x) && isDigit(y)) {
      let [left, right] = [0, 0];
      for (; i < a.length && isDigit(a.charCodeAt(i)); i += 1) left = 10 * left + a.charCodeAt(i) - 48;
      for (; j < b.length && isDigit(b.charCodeAt(j)); j += 1) right = 10 * right + b.charCodeAt(j) - 48;
      if (left !== right) return left < right ? -1 : 1;
    } else {
      if (x !== y) return x - y;
      i += 1;
      j += 1;
    }
  }
  const rest = a.length - i - (b.length - j);
  if (rest !== 0) return rest;
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
