/** A photograph as it is kept: decoded by what it holds, never by its name, and written anew without metadata. */
import sharp from "sharp";
import { AppError } from "@/lib/base/app-error";
import { MOST_PHOTO_BYTES, PHOTO_SIDES_PX, type PhotoSize } from "@/lib/plot/stone-photo";

/** Decoded pixels at most: a camera's 50 megapixels pass, a picture made to fill the memory does not. */
const MOST_PIXELS = 50_000_000;
const FEWEST_SIDE_PX = 32;
const DECODE_SECONDS = 20;
const QUALITY = { small: 78, large: 84 } as const;

const FORMATS: readonly (readonly [name: string, test: (bytes: Uint8Array) => boolean])[] = [
  ["jpeg", (bytes) => startsWith(bytes, [0xff, 0xd8, 0xff])],
  ["png", (bytes) => startsWith(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])],
  [
    "webp",
    (bytes) =>
      startsWith(bytes, [0x52, 0x49, 0x46, 0x46]) && startsWith(bytes.subarray(8), [0x57, 0x45, 0x42, 0x50]),
  ],
];

function startsWith(bytes: Uint8Array, signs: readonly number[]): boolean {
  return signs.every((sign, i) => bytes[i] === sign);
}

const refuse = (message: string) =>
  new AppError("bad-input", "This photograph was not kept.", [{ path: "photograph", message }]);

export interface EncodedPhoto {
  readonly pictures: Readonly<Record<PhotoSize, Uint8Array>>;
  /** Of the large one. */
  readonly widthPx: number;
  readonly heightPx: number;
}

/** No decoder is given anything that does not begin like one of the formats. */
async function readPicture(bytes: Uint8Array) {
  const format = FORMATS.find(([, test]) => test(bytes))?.[0];
  if (format === undefined) throw refuse("is no JPEG, PNG or WebP picture, whatever its name says");
  const open = () => sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: "error", pages: 1 });
  const { format: found, width, height } = await open().metadata();
  if (found !== format) throw refuse("is not what it begins like");
  if (width * height > MOST_PIXELS) throw refuse(`has more than ${MOST_PIXELS / 1_000_000} million pixels`);
  if (Math.min(width, height) < FEWEST_SIDE_PX) throw refuse(`is less than ${FEWEST_SIDE_PX} pixels across`);
  return open;
}

/**
 * Checks a photograph by its content and writes it as two JPEGs, turned upright, in sRGB, on white where it was
 * transparent, with no metadata: no place, no camera, no name. Throws AppError `bad-input` for anything that is not
 * a JPEG, PNG or WebP picture within the limits, cut off ones among them.
 */
export async function encodePhoto(bytes: Uint8Array): Promise<EncodedPhoto> {
  if (bytes.length === 0) throw refuse("is empty");
  if (bytes.length > MOST_PHOTO_BYTES) throw refuse(`is larger than ${MOST_PHOTO_BYTES / 1_000_000} MB`);
  try {
    const open = await readPicture(bytes);
    const encode = (size: PhotoSize) =>
      open()
        .timeout({ seconds: DECODE_SECONDS })
        .rotate()
        .resize({
          width: PHOTO_SIDES_PX[size],
          height: PHOTO_SIDES_PX[size],
          fit: "inside",
          withoutEnlargement: true,
        })
        .flatten({ background: "#ffffff" })
        .toColourspace("srgb")
        .jpeg({ quality: QUALITY[size], mozjpeg: true })
        .toBuffer({ resolveWithObject: true });
    const large = await encode("large");
    const small = await encode("small");
    return {
      pictures: { small: small.data, large: large.data },
      widthPx: large.info.width,
      heightPx: large.info.height,
    };
  } catch (thrown) {
    if (thrown instanceof AppError) throw thrown;
    // What a decoder says of a broken file is for nobody's screen.
    throw refuse("cannot be read: it is damaged, or larger than what is taken");
  }
}
