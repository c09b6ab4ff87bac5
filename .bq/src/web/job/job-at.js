import { jobNamed } from '../../queries/things.js';
/** The job that the address names, or null. */
export const jobAt = ({ store }, c) => jobNamed(store, c.req.param('job'));
