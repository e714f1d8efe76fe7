import type { ReadingPair } from "@/lib/agreement/reader-agreement";
import { getDatabase } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { resolveTerms, TrayTermsSchema } from "@/lib/plot/exercise-terms";
import { ReadingFiguresSchema } from "@/lib/plot/second-reading";

/** Every second reading that was handed in, the oldest first, with who wrote the version that it was compared with. */
export async function listReadingPairs(): Promise<ReadingPair[]> {
  const rows = await getDatabase().secondReading.findMany({
    where: { state: { in: ["handed-in", "settled"] } },
    orderBy: { handedInAt: "asc" },
    select: {
      id: true,
      stoneId: true,
      againstVersion: true,
      figures: true,
      reader: { select: { name: true } },
      stone: {
        select: {
          tray: { select: { terms: true } },
          references: { select: { version: true, author: { select: { name: true } } } },
        },
      },
    },
  });
  return rows.flatMap(({ id, stoneId, againstVersion, figures, reader, stone }): ReadingPair[] => {
    const against = stone.references.find(({ version }) => version === againstVersion);
    if (against === undefined || figures === null) return [];
    const terms = resolveTerms(parseColumn(TrayTermsSchema, stone.tray.terms, "Tray.terms"));
    return [
      {
        readingId: id,
        stoneId,
        first: against.author.name,
        second: reader.name,
        figures: parseColumn(ReadingFiguresSchema, figures, "SecondReading.figures"),
        scale: terms.scales.clarity,
      },
    ];
  });
}
