// The command line: finds the command, answers --help and --version, and turns what went wrong into a sentence.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { COMMANDS, type CommandOfLine, Misused } from './commands.ts';
import { sentenceOf } from './faults.ts';
import { ROOT } from './machine.ts';

async function main(verb: string | undefined, given: readonly string[]): Promise<number> {
  if (verb === '--version') return say((JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { version: string }).version);
  if (verb === '--help' || verb === 'help') return say(helpOfAll());
  const command = verb !== undefined && Object.hasOwn(COMMANDS, verb) ? COMMANDS[verb] : undefined;
  if (!command) return misused(verb === undefined ? 'Name a command.' : `There is no command ${verb}.`, helpOfAll());
  try {
    const { values, positionals } = parseArgs({
      args: [...given],
      options: { help: { type: 'boolean', short: 'h' }, ...command.options },
      allowPositionals: true,
    });
    if (values.help) return say(helpOf(command));
    const unasked = positionals[command.takes];
    if (unasked !== undefined) throw new Misused(`${unasked} is one word too many.`);
    return await command.run(process.env.LEMEL_DATA ?? 'data', positionals, values);
  } catch (error) {
    if (error instanceof Misused || String((error as { code?: unknown }).code).startsWith('ERR_PARSE_ARGS'))
      return misused((error as Error).message, helpOf(command));
    console.error(sentenceOf(error));
    return 1;
  }
}

function say(text: string): number {
  console.log(text);
  return 0;
}

function misused(problem: string, help: string): number {
  console.error(`${problem}\n\n${help}`);
  return 2;
}

const ENDINGS = 'Ends with 0 when it was done, 1 when it could not be done or something is not whole, 2 when it was asked wrongly.';

function helpOf({ called, does, help }: CommandOfLine): string {
  return `lemel ${called}\n  ${does}\n\n${help}\nLEMEL_DATA names the data directory (./data).\n${ENDINGS}`;
}

function helpOfAll(): string {
  const lines = Object.values(COMMANDS).map(({ called, does }) => `lemel ${called.padEnd(26)} ${does}`);
  return [
    ...lines,
    '',
    'lemel COMMAND --help says more; lemel --version its number.',
    'LEMEL_DATA names the data directory (./data).',
    ENDINGS,
  ].join('\n');
}

const [name, ...args] = process.argv.slice(2);
process.exitCode = await main(name, args);
