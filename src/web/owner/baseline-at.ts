// Where the baseline of a chart of loss is accepted.
import type { ChartOf } from '../../book/loss-charts.ts';

const AT = '/loss/baseline';
export const BASELINE_PATH = `${AT}/:bench/:operation/:metal`;
/** The address for one chart; a dash stands where it was not said at which bench. */
export const baselineHref = ({ place, operation, family }: ChartOf): string => `${AT}/${place ?? '-'}/${operation}/${family}`;
