// The one role × route table. A route that is not named here is served to nobody.
import type { StaffRole } from '../book/facts.ts';

/** 'anyone' needs no session; everything else names the roles that may. */
export type Allowed = 'anyone' | readonly StaffRole[];

const STAFF = ['owner', 'bench', 'counter'] as const;
const READERS = [...STAFF, 'auditor'] as const;
const OWNER = ['owner'] as const;
const AUDIT = ['owner', 'auditor'] as const;

export const ROUTES: Readonly<Record<string, Allowed>> = {
  'GET /healthz': 'anyone',
  'GET /readyz': 'anyone',
  'GET /assets/:file': 'anyone',
  'GET /first-run': 'anyone',
  'POST /first-run': 'anyone',
  'GET /sign-in': 'anyone',
  'POST /sign-in': 'anyone',
  'POST /lock': READERS,
  'GET /': READERS,
  'GET /jobs/:job': READERS,
  'GET /jobs/:job/write/:type': STAFF,
  'POST /jobs/:job/write/:type': STAFF,
  'GET /jobs/:job/hand-back': STAFF,
  'POST /jobs/:job/hand-back': STAFF,
  'GET /take-in': STAFF,
  'POST /take-in': STAFF,
  'GET /taken-in/:seq': STAFF,
  'GET /jobs/:job/stones': READERS,
  'GET /jobs/:job/letter': STAFF,
  'GET /jobs/:job/letter.html': STAFF,
  'GET /bench': READERS,
  'GET /safe': READERS,
  'GET /safe/count/:place': READERS,
  'GET /owner': OWNER,
  'GET /photos/:hash': READERS,
  'GET /things/:thing': READERS,
  'GET /write/:type': STAFF,
  'POST /write/:type': STAFF,
  'GET /entries/:seq': READERS,
  'GET /entries/:seq/correct/:field': STAFF,
  'POST /entries/:seq/correct/:field': STAFF,
  'GET /devices': OWNER,
  'POST /devices': OWNER,
  'POST /devices/end': OWNER,
  'GET /enrol': 'anyone',
  'POST /enrol': 'anyone',
  'GET /drafts': STAFF,
  'POST /drafts': STAFF,
  'POST /drafts/drop': STAFF,
  'GET /calculator': STAFF,
  'GET /calculator/use': STAFF,
  'GET /calculator/:calculation': STAFF,
  'GET /trail': READERS,
  'POST /trail/check': READERS,
  'GET /export.jsonl': AUDIT,
  'GET /find': READERS,
  'GET /setup': OWNER,
  'GET /setup/recovery-sheet': OWNER,
  'POST /setup/pin': OWNER,
};
