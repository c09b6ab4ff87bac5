// The shop's terms: their words are changed here and written with the digest by which agreements and papers name them.
import { Hono } from 'hono';
import { ASK_A_LAWYER, firstTerms } from '../../book/terms.ts';
import { termsSet } from '../../entries/terms-set.ts';
import { hex, utf8 } from '../../log/bytes.ts';
import { sha256 } from '../../store/crypto.ts';
import { type FormOf, showFormPage } from '../form/form-page.ts';
import { receiveForm } from '../form/submit.ts';
import { type Ctx, type Env, policyFor, type Resource } from '../session/context.ts';

export const terms: Resource = (web) => {
  const app = new Hono<Env>();
  app.get('/setup/terms', (c) => {
    const { terms: name, termsTexts, country } = policyFor(c);
    const now = (name === null ? undefined : termsTexts.get(name)) ?? firstTerms(country);
    return showFormPage(web, c, formOf(c), { typed: new Map([['text', [now]]]) });
  });
  app.post('/setup/terms', (c) => receiveForm(web, c, formOf(c)));
  return app;
};

/** The lines that set a text of terms. */
export const termsLine = (shop: string, text: string) => ({
  type: 'terms_set',
  data: { shop, text, digest: hex(sha256(utf8(text))) },
});

function formOf(c: Ctx): FormOf {
  const { shop: ref, digest: _follows, ...fields } = termsSet.fields;
  const { labels, ...form } = termsSet.form;
  return {
    fields: { shop: ref, ...fields },
    form: { ...form, labels, hints: { text: `${form.hints?.text ?? ''} ${ASK_A_LAWYER}` } },
    entry: 'terms_set',
    action: c.req.path,
    current: '/setup',
    next: () => '/setup',
    lines: ({ shop, text }) => [
      termsLine(
        String(shop),
        String(text)
          .replace(/\n{2,}/g, '\n')
          .trim(),
      ),
    ],
  };
}
