const TICKS = Array.from({ length: 60 }, (_, index) => index);

/** A girdle with a clock's graduation and one numbered mark: the quiet picture of what is done here. */
export function ClockRing({ label, className }: { label: string; className?: string | undefined }) {
  return (
    <svg viewBox="-110 -110 220 220" fill="none" aria-hidden="true" focusable="false" className={className}>
      <circle r="88" stroke="var(--lw-line-strong)" strokeWidth="1" />
      <circle r="50" stroke="var(--lw-line)" strokeWidth="1" />
      {TICKS.map((tick) => (
        <line
          key={tick}
          y1={tick % 5 === 0 ? -104 : -100}
          y2={-95}
          stroke="var(--lw-line-strong)"
          strokeWidth={tick % 15 === 0 ? 2 : 1}
          transform={`rotate(${tick * 6})`}
        />
      ))}
      <path d="M32 -26 L66 -60 H84" stroke="var(--lw-accent)" strokeWidth="1.25" />
      <circle cx="29" cy="-23" r="4" stroke="var(--lw-accent)" strokeWidth="1.75" />
      <text x="76" y="-66" textAnchor="middle" fontSize="13" fontWeight="600" fill="var(--lw-ink)">
        {label}
      </text>
    </svg>
  );
}
