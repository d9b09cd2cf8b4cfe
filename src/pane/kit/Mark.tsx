/** The product's mark: a gauge arc filled to the brim. */
export function Mark({ className }: { className?: string }) {
  return (
    <svg viewBox="0 0 24 24" className={className} aria-hidden="true">
      <path
        d="M5.6 19.4a9 9 0 1 1 12.8 0"
        fill="none"
        stroke="currentColor"
        strokeWidth="3"
        strokeLinecap="round"
      />
      <path d="M12 13 17.2 17.6" fill="none" stroke="currentColor" strokeWidth="2" strokeLinecap="round" />
      <circle cx="12" cy="13" r="1.8" fill="currentColor" />
    </svg>
  );
}
