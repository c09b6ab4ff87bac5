// Configuration: LEMEL_* variables, all problems told at once. Pure: the environment is passed in.
import { z } from 'zod';

const schema = z.object({
  LEMEL_DATA: z.string().min(1, 'Name the data directory.').default('data'),
  LEMEL_PORT: z
    .string()
    .regex(/^[1-9]\d{0,4}$/, 'Give a port from 1 to 65535, in decimal figures.')
    .transform(Number)
    .refine((port) => port <= 65_535, 'Give a port from 1 to 65535.')
    .default(8417),
  LEMEL_MODE: z.enum(['loopback', 'lan'], 'Choose loopback, for this PC alone, or lan, for screens in the shop.').default('loopback'),
  LEMEL_ADDRESS: z
    .string()
    .regex(/^[A-Za-z0-9]([A-Za-z0-9.-]*[A-Za-z0-9])?$/, 'Give this machine’s own address in the shop, for example 192.168.1.20.')
    .optional(),
});

export interface Config {
  readonly dataDir: string;
  readonly port: number;
  /** One PC over plain http, or the screens of the shop over https. */
  readonly mode: 'loopback' | 'lan';
  readonly address: string;
  readonly baseUrl: string;
}

/** Reads the LEMEL_* variables; throws one error that lists every problem. An unknown LEMEL_* name is a problem too. */
export function readConfig(environment: Readonly<Record<string, string | undefined>>): Config {
  const unknown = Object.keys(environment).filter(
    (name) => name.startsWith('LEMEL_') && !Object.hasOwn(schema.shape, name) && name !== 'LEMEL_REFERENCE',
  );
  const parsed = schema.safeParse(environment);
  const problems = [
    ...unknown.map((name) => `${name}: there is no such setting.`),
    ...(parsed.error?.issues ?? []).map(({ path, message }) => `${path.join('.')}: ${message}`),
    ...modeProblem(parsed.data?.LEMEL_MODE, parsed.data?.LEMEL_ADDRESS),
  ];
  if (!parsed.success || problems.length > 0) throw new Error(problems.join('\n'));
  const { LEMEL_DATA: dataDir, LEMEL_PORT: port, LEMEL_MODE: mode, LEMEL_ADDRESS: address = '127.0.0.1' } = parsed.data;
  return { dataDir, port, mode, address, baseUrl: `${mode === 'lan' ? 'https' : 'http'}://${address}:${port}` };
}

function modeProblem(mode: string | undefined, address: string | undefined): readonly string[] {
  if (mode === 'lan' && address === undefined) return ['LEMEL_ADDRESS: give the address at which tablets reach this machine.'];
  return mode === 'loopback' && address !== undefined ? ['LEMEL_ADDRESS: this belongs to LEMEL_MODE=lan.'] : [];
}
