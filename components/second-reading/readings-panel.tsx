"use client";

import Link from "next/link";
import { useRouter } from "next/navigation";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import classes from "@/components/second-reading/second-reading.module.css";
import { ConfirmButton } from "@/components/ui/confirm-button";
import { ErrorNote } from "@/components/ui/error-note";
import { LinkButton } from "@/components/ui/link-button";
import { When } from "@/components/ui/when";
import type { ReadingRow, StoneReadings } from "@/lib/plot/second-reading";

export interface ReadingsPanelProps {
  stoneHref: string;
  readings: StoneReadings;
  start: () => Promise<ActionResult<{ readingId: string }>>;
}

function ReadingLine({ row, href }: { row: ReadingRow; href: string }) {
  const { figures, handedInAt, settledVersion, state } = row;
  if (state === "given-up") {
    return (
      <li>
        {row.readerName} began one <When iso={row.createdAt} /> and gave it up.
      </li>
    );
  }
  if (state === "drawing" || handedInAt === null) {
    return (
      <li>
        {row.readerName} began one <When iso={row.createdAt} /> and has not handed it in.
      </li>
    );
  }
  return (
    <li>
      <Link href={href}>
        {row.readerName}, <When iso={handedInAt} />
      </Link>
      {figures !== null &&
        `: ${figures.matched === 1 ? "1 mark" : `${figures.matched} marks`} in common, of ${figures.first} in the reference and ${figures.second} of theirs`}
      {settledVersion === null ? ". Not settled yet." : `. Settled into version ${settledVersion}.`}
    </li>
  );
}

/** A stone's second readings, and the way to begin one. */
export function ReadingsPanel({ stoneHref, readings, start }: ReadingsPanelProps) {
  const router = useRouter();
  const { run, failure } = useAction(start);
  const hrefOf = (readingId: string) => `${stoneHref}/second-reading/${readingId}`;
  const begin = async () => {
    const begun = await run();
    if (begun !== null) router.push(hrefOf(begun.value.readingId));
    return begun !== null;
  };
  return (
    <section className={classes.panel} aria-labelledby="readings-title">
      <h2 id="readings-title">Second readers</h2>
      {readings.readings.length === 0 ? (
        <p className="muted">
          Nobody has plotted this stone a second time. A colleague who has not seen the reference plots it;
          the two are compared and settled.
        </p>
      ) : (
        <ul className={classes.list}>
          {readings.readings.map((row) => (
            <ReadingLine key={row.readingId} row={row} href={hrefOf(row.readingId)} />
          ))}
        </ul>
      )}
      {readings.openReadingId !== null ? (
        <div className="no-print">
          <LinkButton href={hrefOf(readings.openReadingId)}>Go on with your second reading</LinkButton>
        </div>
      ) : readings.whyNot !== null ? (
        <p className="muted">{readings.whyNot}</p>
      ) : (
        <div className="no-print">
          <ConfirmButton
            question="Plot this stone without its reference?"
            detail={
              <p>
                Begin only if you have not looked at its reference. From now until you hand in, the program
                shows you nothing of it: neither marks nor grades, nor what students mark.
              </p>
            }
            confirmLabel="Begin"
            onConfirm={begin}
          >
            Plot it as second reader
          </ConfirmButton>
        </div>
      )}
      {failure !== null && <ErrorNote message={failure.message} faults={failure.faults} />}
    </section>
  );
}
