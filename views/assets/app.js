// What a page does beyond its forms: lets htmx run under Trusted Types, says when something could not be sent, keeps what is typed, locks after ten idle minutes.
(() => {
  const say = (words) => {
    const at = document.getElementById('alert');
    if (!at) return;
    at.textContent = words;
    at.hidden = words === '';
  };

  if (window.htmx) {
    window.htmx.registerExtension('trusted', {
      init(api) {
        const policy = window.trustedTypes?.createPolicy('htmx', { createHTML: (html) => html, createScript: () => '' });
        if (policy) api.initSecurity(policy);
      },
    });
  }

  document.addEventListener('click', ({ target }) => {
    if (target.closest?.('[data-print]')) window.print();
  });

  const notWritten = 'Not written. The entry is still on this screen; try again.';
  document.addEventListener('htmx:error', () => say(notWritten));
  document.addEventListener('htmx:response:error', ({ detail }) => {
    if ((detail?.ctx?.response?.status ?? 500) >= 500) say(notWritten);
  });
  document.addEventListener('htmx:after:swap', () => {
    say('');
    document.querySelector('[autofocus]')?.focus();
  });
  window.addEventListener('offline', () => say('No connection. What you type stays on this screen; write it when the connection is back.'));
  window.addEventListener('online', () => say(''));

  /** The form that locks; a page without it has nobody to lock out. */
  const LOCKABLE = '.who';
  const KEEP_MS = 2000;
  let changed = null;
  let due = 0;
  const keep = () => {
    clearTimeout(due);
    const form = changed;
    changed = null;
    if (!form?.isConnected) return Promise.resolve();
    const fields = new FormData(form);
    for (const [name, value] of [...fields]) if (typeof value !== 'string') fields.delete(name);
    for (const secret of form.querySelectorAll('[type="password"]')) fields.delete(secret.name);
    fields.set('draft.path', new URL(form.action).pathname);
    return fetch('/drafts', { method: 'POST', body: fields, keepalive: true, redirect: 'manual' }).catch(() => {
      changed ??= form;
    });
  };
  document.addEventListener('input', ({ target }) => {
    const form = target.closest?.('form[data-form]');
    if (!form || target.type === 'password') return;
    changed = form;
    clearTimeout(due);
    due = setTimeout(keep, KEEP_MS);
  });
  document.addEventListener('submit', (event) => {
    const { target } = event;
    if (target === changed) changed = null;
    if (!changed || !target.matches(LOCKABLE)) return;
    event.preventDefault();
    keep().finally(() => target.submit());
  });
  window.addEventListener('pagehide', keep);

  const IDLE_MS = 600_000;
  let touched = Date.now();
  for (const kind of ['input', 'keydown', 'pointerdown'])
    document.addEventListener(kind, () => {
      touched = Date.now();
    });
  setInterval(async () => {
    if (Date.now() - touched < IDLE_MS || !document.querySelector(LOCKABLE)) return;
    touched = Date.now();
    const form = document.querySelector('form[data-form]');
    await keep();
    await fetch('/lock', { method: 'POST', redirect: 'manual' }).catch(() => undefined);
    const back = form ? `${new URL(form.action).pathname}?draft=${form.dataset.form}` : location.pathname + location.search;
    location.assign(`/sign-in?back=${encodeURIComponent(back)}`);
  }, 5000);
})();
