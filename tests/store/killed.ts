// A program killed in the midst of its work: what it had acknowledged by then.
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';

/** Starts node with `args`, kills it with SIGKILL when it has printed `lines` lines, and answers every whole line it printed. Throws if it ended by itself. */
export async function killedAfter(args: readonly string[], lines: number): Promise<readonly string[]> {
  const child: ChildProcess = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
  if (!child.stdout) throw new Error('the program has no output');
  const printed: string[] = [];
  const reading = createInterface({ input: child.stdout });
  reading.on('line', (line) => {
    printed.push(line);
    if (printed.length === lines) child.kill('SIGKILL');
  });
  const [[code, signal]] = await Promise.all([once(child, 'exit'), once(reading, 'close')]);
  if (signal !== 'SIGKILL') throw new Error(`the program ended by itself with ${code} after ${printed.length} lines`);
  return printed;
}
