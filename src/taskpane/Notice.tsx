/** A plain message in place of the pane. It needs no theme, so that nothing can keep it from being shown. */
export function Notice({ children }: { readonly children: string }) {
  return (
    <main className="notice" role="alert">
      <h1>Brimbook</h1>
      <p>{children}</p>
      <button type="button" onClick={() => window.location.reload()}>
        Reload
      </button>
    </main>
  );
}
