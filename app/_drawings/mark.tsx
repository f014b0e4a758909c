/** The mark: air from the right meets a round thing; behind it, at the left, the hatched lee. */
export function Mark({ width = 34 }: { readonly width?: number }) {
  return (
    <svg xmlns="http://www.w3.org/2000/svg" className="d-sheet" width={width} height={width * (24 / 34)} viewBox="0 0 34 24" aria-hidden>
      <path className="d-line d-accent-thin" strokeWidth={1.5} d="M1.5 14.5L6 19M2 8.5L5.6 12M4 17.6L8.6 21.8" />
      <circle className="d-line d-outline d-fill-paper" cx={14} cy={12} r={7} />
      <path className="d-line d-outline" d="M12 1.8H32M22.6 8H32M22.6 16H32M12 22.2H32" />
    </svg>
  );
}
