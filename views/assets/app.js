// What a page does beyond its forms: lets htmx run under Trusted Types, says when something could not be sent, guards typed weights.
(() => {
  const strip = () => document.getElementById('alert');
  const say = (words) => {
    const at = strip();
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

  const notWritten = 'Not written. The entry is still on this screen; try again.';
  document.addEventListener('htmx:error', () => say(notWritten));
  document.addEventListener('htmx:response:error', () => say(notWritten));
  document.addEventListener('htmx:after:swap', () => {
    say('');
    document.querySelector('[autofocus]')?.focus();
  });

  let typed = false;
  document.addEventListener('input', (event) => {
    if (event.target.closest?.('.weigh')) typed = true;
  });
  document.addEventListener('submit', () => {
    typed = false;
  });
  window.addEventListener('beforeunload', (event) => {
    if (typed) event.preventDefault();
  });
})();
