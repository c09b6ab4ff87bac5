/** Only pages that are asked for: whoever writes must see what was written. */
export function oneMoment(web) {
  return async function readInOneMoment(c, next) {
    return c.req.method === 'GET' || c.req.method === 'HEAD' ? web.store.snapshot(() => next()) : next();
  };
}
