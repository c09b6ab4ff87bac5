// A bag's code in its tag; the pattern of the spine tells the metal family.
export function Tag({ code, metal, href }: { readonly code: string; readonly metal: string; readonly href?: string }) {
  const family = metal.split('-')[0] ?? 'other';
  const tag = (
    <>
      <span class={`spine ${family}`} aria-hidden="true" />
      <code>{code}</code>
    </>
  );
  return href ? (
    <a class="tag" href={href}>
      {tag}
    </a>
  ) : (
    <p class="tag">{tag}</p>
  );
}
