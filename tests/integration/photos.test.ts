/** Photographs: what is taken in, what is left of it, who sees it, and where the files are. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { getPhotoFile } from "@/lib/data/get-photo-file";
import { getStone } from "@/lib/data/get-stone";
import { listShownPhotos } from "@/lib/data/list-shown-photos";
import { getFilesFolder } from "@/lib/data/store/files-folder";
import { addPhoto } from "@/lib/workflows/add-photo";
import { deletePhoto } from "@/lib/workflows/delete-photo";
import { orderPhotos } from "@/lib/workflows/order-photos";
import { updatePhoto } from "@/lib/workflows/update-photo";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { makePicture } from "@/tests/support/make-picture";
import { buildSchool, type School } from "@/tests/support/school";

let database: TestDatabase;
let school: School;
beforeAll(async () => {
  database = await createTestDatabase();
  school = await buildSchool();
});
afterAll(() => database.remove());

const add = (bytes: Uint8Array<ArrayBuffer>) => addPhoto(school.iris, { stoneId: school.stoneIds[0], bytes });
const listFiles = () => {
  try {
    return readdirSync(join(getFilesFolder(), "photos")).sort();
  } catch {
    return [];
  }
};
const refuse = async (bytes: Uint8Array<ArrayBuffer>, why: RegExp) => {
  const before = listFiles();
  const refusal = await add(bytes).then(
    () => null,
    (thrown: unknown) => thrown,
  );
  expect(refusal).toMatchObject({ code: "bad-input" });
  expect(JSON.stringify((refusal as { faults: unknown }).faults)).toMatch(why);
  expect(listFiles(), "nothing is left behind").toEqual(before);
};

describe("a photograph", () => {
  it.each(["jpeg", "png", "webp"] as const)(
    "%s is kept in two sizes, as JPEG without metadata",
    async (format) => {
      const picture = await makePicture(format, 2000);
      if (format === "jpeg") expect(Buffer.from(picture).includes("camera-secret")).toBe(true);
      const { photoId } = await add(picture);
      for (const [size, side] of [
        ["small", 320],
        ["large", 1600],
      ] as const) {
        const { bytes } = await getPhotoFile(school.iris, photoId, size);
        const seen = await sharp(bytes).metadata();
        expect([seen.format, seen.width, seen.height]).toEqual(["jpeg", side, side]);
        expect([seen.exif, seen.xmp, seen.iptc, seen.icc]).toEqual([
          undefined,
          undefined,
          undefined,
          undefined,
        ]);
        for (const secret of ["camera-secret", "place-secret", "GPS"])
          expect(Buffer.from(bytes).includes(secret)).toBe(false);
      }
      await deletePhoto(school.iris, { photoId });
      expect(listFiles()).toEqual([]);
    },
  );

  it("is turned upright as its camera said, and never enlarged", async () => {
    const lying = await sharp({ create: { width: 100, height: 50, channels: 3, background: "#fff" } })
      .withMetadata({ orientation: 6 })
      .jpeg()
      .toBuffer();
    const { photoId } = await add(new Uint8Array(lying));
    const { bytes } = await getPhotoFile(school.iris, photoId, "large");
    const { width, height } = await sharp(bytes).metadata();
    expect([width, height]).toEqual([50, 100]);
    await deletePhoto(school.iris, { photoId });
  });
});

describe("what is no photograph is refused by its content", () => {
  const text = (words: string) => new Uint8Array(Buffer.from(words));
  it("nothing, text, markup, a vector picture, another format", async () => {
    await refuse(new Uint8Array(), /empty/);
    await refuse(text("<html><script>alert(1)</script>"), /no JPEG/);
    await refuse(text('<svg xmlns="http://www.w3.org/2000/svg" width="99" height="99"/>'), /no JPEG/);
    const gif = await sharp({ create: { width: 64, height: 64, channels: 3, background: "#fff" } })
      .gif()
      .toBuffer();
    await refuse(new Uint8Array(gif), /no JPEG/);
  });

  it("a picture that is cut off, or that only begins like one", async () => {
    const whole = await makePicture("png", 400);
    await refuse(whole.slice(0, whole.length / 2), /damaged/);
    await refuse(new Uint8Array([0xff, 0xd8, 0xff, ...text("not a picture at all")]), /damaged/);
  });

  it("a picture of too many pixels, whatever its bytes", async () => {
    const bomb = await sharp({
      create: { width: 9000, height: 9000, channels: 3, background: "#fff" },
      limitInputPixels: false,
    })
      .png({ compressionLevel: 9 })
      .toBuffer();
    expect(bomb.length).toBeLessThan(1_000_000);
    await refuse(new Uint8Array(bomb), /pixels|larger/);
    await refuse(new Uint8Array(20_000_001), /20 MB/);
    await refuse(await makePicture("jpeg", 8), /less than 32/);
  });
});

describe("who sees it", () => {
  it("students of an exercise with the stone once it is shown, and nobody else's", async () => {
    const { photoId } = await add(await makePicture());
    const see = (viewer: School["ada"]) => getPhotoFile(viewer, photoId, "small");
    for (const viewer of [school.ada, school.ben, school.cyd]) {
      await expect(see(viewer)).rejects.toMatchObject({ code: "not-found" });
    }
    await updatePhoto(school.iris, { photoId, caption: "At 6", isShown: true });
    for (const viewer of [school.ada, school.ben, school.cyd]) {
      expect((await see(viewer)).bytes.length).toBeGreaterThan(100);
    }
    // Ada's bench is of the second stone, which has none.
    expect(await listShownPhotos(school.ada, school.adaOnBench)).toEqual([]);
    expect(await listShownPhotos(school.ben, school.benReleased)).toMatchObject([{ caption: "At 6" }]);
    const second = await addPhoto(school.iris, {
      stoneId: school.stoneIds[1],
      bytes: await makePicture(),
    });
    await updatePhoto(school.iris, { photoId: second.photoId, caption: "", isShown: true });
    // Cyd's section has no exercise with the second stone.
    await expect(getPhotoFile(school.cyd, second.photoId, "small")).rejects.toMatchObject({
      code: "not-found",
    });
    await updatePhoto(school.iris, { photoId, caption: "At 6", isShown: false });
    await expect(see(school.ada)).rejects.toMatchObject({ code: "not-found" });
    await deletePhoto(school.iris, { photoId });
  });
});

describe("the strip", () => {
  it("keeps its order, and refuses an order of what it is not", async () => {
    const stoneId = school.stoneIds[0];
    const one = (await add(await makePicture())).photoId;
    const two = (await add(await makePicture())).photoId;
    await orderPhotos(school.iris, { stoneId, photoIds: [two, one] });
    const listed = async () => (await getStone(school.iris, stoneId)).photos.map(({ photoId }) => photoId);
    expect(await listed()).toEqual([two, one]);
    for (const photoIds of [[one], [one, one], [one, two, two]]) {
      await expect(orderPhotos(school.iris, { stoneId, photoIds })).rejects.toMatchObject({
        code: "conflict",
      });
    }
    expect(await listed()).toEqual([two, one]);
  });
});

it("files have random names that say nothing of the stone, and none is half written", () => {
  const files = listFiles();
  expect(files.length).toBeGreaterThan(0);
  for (const file of files) {
    expect(file).toMatch(/^[0-9a-f-]{36}-(small|large)\.jpg$/);
    expect(
      readFileSync(join(getFilesFolder(), "photos", file))
        .subarray(0, 3)
        .toString("hex"),
    ).toBe("ffd8ff");
  }
});
