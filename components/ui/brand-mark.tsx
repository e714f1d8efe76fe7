/** The program's own sign: a girdle, one mark, and the line that leads to its callout. */
export function BrandMark({ size = 24 }: { size?: number }) {
  return (
    <svg width={size} height={size} viewBox="0 0 24 24" fill="none" aria-hidden="true" focusable="false">
      <circle cx="10.5" cy="13.5" r="8.5" stroke="currentColor" strokeWidth="1.6" />
      <circle cx="12.5" cy="11.5" r="1.9" fill="var(--lw-accent)" />
      <path d="M14 10 L21.5 2.5" stroke="var(--lw-accent)" strokeWidth="1.6" strokeLinecap="round" />
    </svg>
  );
}
