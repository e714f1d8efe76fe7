import { toTellingWords, toVerdictWords } from "@/components/tray/to-verdict-words";
import classes from "@/components/tray/verdict-panel.module.css";
import { StatusBadge } from "@/components/ui/status-badge";
import type { CheckRank, StoneVerdict } from "@/lib/plot/stone-check";

const SHOWN = 4;

function RankRow({ rank, features }: { rank: CheckRank; features: number }) {
  const { label, fit, placed, weightFit } = rank;
  const weight =
    weightFit === null
      ? ""
      : weightFit === 1
        ? ", weight agrees"
        : weightFit === 0
          ? ", weight rules it out"
          : ", weight is off";
  return (
    <li className={classes.rank}>
      <strong>{label}</strong>
      <span className={classes.track} aria-hidden="true">
        <span className={classes.bar} style={{ inlineSize: `${100 * fit}%` }} />
      </span>
      <span className={classes.fit}>{Math.round(100 * fit)} %</span>
      <span className={classes.why}>
        {placed} of {features} in place{weight}
      </span>
    </li>
  );
}

/** Which stone it is, how far ahead of the next, and what to look at to be surer. Staff. */
export function VerdictPanel({
  verdict,
  label,
  features,
}: {
  verdict: StoneVerdict;
  label: string | null;
  features: number;
}) {
  const words = toVerdictWords(verdict, label);
  const isOpen = verdict.certainty !== "clear";
  return (
    <div className={classes.root}>
      <p className={classes.title} role="status">
        <StatusBadge tone={words.tone}>{words.title}</StatusBadge>
      </p>
      <p>{words.detail}</p>
      <ol className={classes.ranks} aria-label="Stones by fit">
        {verdict.ranks.slice(0, SHOWN).map((rank) => (
          <RankRow key={rank.label} rank={rank} features={features} />
        ))}
      </ol>
      {(isOpen || verdict.outcome === "unsure") &&
        (verdict.telling.length > 0 || verdict.weighing !== null) && (
          <div>
            <h3 className={classes.more}>To be surer</h3>
            <ul className={classes.telling}>
              {verdict.weighing !== null && (
                <li>
                  Weigh it: {verdict.ranks[0]?.label} weighs {verdict.weighing[0]} ct,{" "}
                  {verdict.ranks[1]?.label} {verdict.weighing[1]} ct.
                </li>
              )}
              {verdict.telling.map((one) => (
                <li key={one.label}>Look for a {toTellingWords(one)}</li>
              ))}
            </ul>
          </div>
        )}
    </div>
  );
}
