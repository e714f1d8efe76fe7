import { TriangleAlert } from "lucide-react";
import classes from "@/components/ui/cleaning-cautions.module.css";

/** In our own words; sources of the cautions: the trade pages listed in the school notes of the project's documents. */
const CAUTIONS = [
  "Warm water, mild soap, a soft brush and a dry lint-free cloth. Never hot water: sudden heat or cold can crack a stone.",
  "No steam, no ultrasonic bath, no boiling and no acid in class.",
  "A stone that may be filled or coated, or that has a feather at its surface: wipe it only, and ask first.",
  "Keep ammonia, bleach and solvents away from porous and organic gems.",
  "Tweezers over a tray, one stone at a time. A diamond can chip, and it scratches other diamonds.",
] as const;

/** How a stone may be cleaned and held in class. The school's own rules come first where there are any. */
export function CleaningCautions({ schoolRules = "" }: { schoolRules?: string }) {
  return (
    <section className={classes.root} aria-label="Cautions for cleaning and handling">
      <h3 className={classes.title}>
        <TriangleAlert size={17} aria-hidden="true" /> Before you clean it
      </h3>
      {schoolRules.trim() !== "" && (
        <div className={classes.rules}>
          <h4 className={classes.rulesTitle}>Your school’s rules</h4>
          <p className={classes.rulesText}>{schoolRules}</p>
        </div>
      )}
      <ul className={classes.list}>
        {CAUTIONS.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <p className={classes.defer}>
        Your school’s own rules and those licensed to clean and handle stones go before anything said here.
        When in doubt, ask your instructor.
      </p>
    </section>
  );
}
