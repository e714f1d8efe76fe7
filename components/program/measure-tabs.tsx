import Link from "next/link";
import classes from "@/components/program/program.module.css";
import { MEASURE_WORDS } from "@/components/program/program-words";
import { PROGRAM_MEASURES, type ProgramMeasure } from "@/lib/agreement/program-report";

/** What is held side by side. Part of the address, so that it can be kept and sent. */
export function MeasureTabs({ shown }: { shown: ProgramMeasure }) {
  return (
    <nav aria-label="What is compared" className={`${classes.tabs} no-print`}>
      {PROGRAM_MEASURES.map((measure) => (
        <Link
          key={measure}
          href={`/program?measure=${measure}`}
          className={classes.tab}
          aria-current={measure === shown ? "page" : undefined}
          scroll={false}
        >
          {MEASURE_WORDS[measure].title}
        </Link>
      ))}
    </nav>
  );
}
