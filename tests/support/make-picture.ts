import sharp from "sharp";

/** A small picture with a place and a camera in its metadata, as a telephone makes it. */
export async function makePicture(
  format: "jpeg" | "png" | "webp" = "jpeg",
  side = 64,
): Promise<Uint8Array<ArrayBuffer>> {
  const picture = sharp({ create: { width: side, height: side, channels: 3, background: "#804020" } });
  const exif = {
    IFD0: { Make: "camera-secret", ImageDescription: "place-secret" },
    IFD3: {
      GPSLatitudeRef: "N",
      GPSLatitude: "51/1 30/1 0/1",
      GPSLongitudeRef: "E",
      GPSLongitude: "4/1 0/1 0/1",
    },
  };
  return new Uint8Array(await picture.withExif(exif).toFormat(format).toBuffer());
}
