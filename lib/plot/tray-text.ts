/** The texts of a tray as they are taken in. */
import { z } from "zod";

export const TrayTextSchema = z.strictObject({
  name: z.string().trim().min(1, "give the tray a name").max(200),
  notes: z.string().trim().max(10_000).default(""),
});
