/** Photographs of a stone, as screens and routes speak of them. */
import { z } from "zod";

/** The two sizes that are kept: the longer side, px, at most. */
export const PHOTO_SIDES_PX = { small: 320, large: 1600 } as const;
export const PhotoSizeSchema = z.enum(["small", "large"]);
export type PhotoSize = z.infer<typeof PhotoSizeSchema>;

/** What may be sent, bytes; and how many photographs a stone may have. */
export const MOST_PHOTO_BYTES = 20_000_000;
export const MOST_PHOTOS = 24;

export const PhotoCaptionSchema = z.string().trim().max(200);

/** As whoever may see the photograph is told of it. */
export const PhotoViewSchema = z.strictObject({
  photoId: z.string(),
  caption: z.string(),
  widthPx: z.int(),
  heightPx: z.int(),
});
export type PhotoView = z.infer<typeof PhotoViewSchema>;

/** As staff are told of it. */
export const StaffPhotoViewSchema = z.strictObject({
  ...PhotoViewSchema.shape,
  /** Whether students of an exercise with this stone see it. */
  isShown: z.boolean(),
});
export type StaffPhotoView = z.infer<typeof StaffPhotoViewSchema>;
