// Configuration: LEMEL_* variables, all problems told at once. Pure: the environment is passed in.
import { z } from 'zod';

const schema = z.object({
  LEMEL_DATA: z.string().min(1, 'Name the data directory.').default('data'),
  LEMEL_PORT: z.coerce
    .number('Give a port number.')
    .int()
    .min(1, 'Give a port from 1 to 65535.')
    .max(65_535, 'Give a port from 1 to 65535.')
    .default(8417),
});

export interface Config {
  readonly dataDir: string;
  readonly port: number;
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
  ];
  if (!parsed.success || problems.length > 0) throw new Error(problems.join('\n'));
  const { LEMEL_DATA: dataDir, LEMEL_PORT: port } = parsed.data;
  return { dataDir, port, baseUrl: `http://127.0.0.1:${port}` };
}
