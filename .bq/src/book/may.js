const STAFF = ['owner', 'bench', 'counter'];
/** Whoever works here, as signed in. */
export const anyStaff = { roles: STAFF, asks: 'session' };
/** Whoever works here, with the PIN typed again: what leaves the premises, what comes after hand-back, what is signed for. */
export const anyStaffByPin = { roles: STAFF, asks: 'pin' };
/** The owner, with the password typed again: people, roles, policy, devices, balances, terms, limits. */
export const ownerByPassword = { roles: ['owner'], asks: 'password' };
const RANK = { session: 0, pin: 1, password: 2, import: 2 };
/** Whether what was typed is as sure as what is asked. */
export const isSureEnough = (auth, asks) => RANK[auth] >= RANK[asks];
/** The surer of what two ask. */
export const surer = (a, b) => (isSureEnough(a, b) ? a : b);
