/** Ways to the shelves of a long page, right below its head. */
export function JumpList({ shelves }: { readonly shelves: readonly { readonly id: string; readonly title: string }[] }) {
  return (
    <nav className="jumps not-printed" aria-label="Shelves of this page">
      <ul>{shelves.map((shelf) => <li key={shelf.id}><a href={`#${shelf.id}`}>{shelf.title}</a></li>)}</ul>
    </nav>
  );
}
