/**
 * The short code on a stone's label: the first 40 bits of the stone's random id in Crockford's base 32, which has no
 * letter that reads as a digit (D. Crockford, Base 32, crockford.com/base32.html). It names the stone and says nothing
 * of it; what may be seen of the stone is asked of access as anywhere.
 */
const SIGNS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
const CODE_SIGNS = 8;
const HEX_DIGITS = 10;

/** `7K3M-9QXA`, from a stone's id. Throws Error for an id that is no uuid. */
export function toStoneCode(stoneId: string): string {
  const hex = stoneId.replaceAll("-", "").slice(0, HEX_DIGITS);
  if (!/^[0-9a-f]{10}$/i.test(hex)) throw new Error("a stone's id is a uuid");
  let rest = BigInt(`0x${hex}`);
  let code = "";
  for (let i = 0; i < CODE_SIGNS; i += 1) {
    code = (SIGNS[Number(rest % 32n)] as string) + code;
    rest /= 32n;
  }
  return `${code.slice(0, 4)}-${code.slice(4)}`;
}

/** The scan page's address under where people reach the program. */
export function toScanAddress(base: string, code: string): string {
  return `${base.replace(/\/$/, "")}/scan/${code}`;
}

/**
 * The beginning of the stone's id that a scanned address or a typed code stands for; null where it is neither. Small
 * letters, blanks and the letters O, I and L are read as they are meant.
 */
export function readStoneCode(text: string): string | null {
  const last = text.trim().split("/").at(-1) ?? "";
  const code = last
    .split(/[?#]/, 1)[0]
    ?.toUpperCase()
    .replace(/[\s-]/g, "")
    .replaceAll("O", "0")
    .replace(/[IL]/g, "1");
  if (code === undefined || code.length !== CODE_SIGNS) return null;
  let value = 0n;
  for (const sign of code) {
    const digit = SIGNS.indexOf(sign);
    if (digit < 0) return null;
    value = value * 32n + BigInt(digit);
  }
  const hex = value.toString(16).padStart(HEX_DIGITS, "0");
  return `${hex.slice(0, 8)}-${hex.slice(8)}`;
}
