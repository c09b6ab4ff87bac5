// The program as a real process, for tests: started on a free port over a data directory, asked over HTTP, killed for real.
import { spawn } from 'node:child_process';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { BUILD } from './build.js';
/** Starts the program; does not wait for it to serve. */
export function start({ dir, port = 8417, env = {} }) {
  const child = spawn(process.execPath, [join(BUILD, 'src', 'server.js')], {
    env: { PATH: process.env.PATH ?? '', LEMEL_DATA: dir, LEMEL_PORT: String(port), ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  const hear = (chunk) => {
    said += chunk.toString();
  };
  child.stdout?.on('data', hear);
  child.stderr?.on('data', hear);
  const ended = new Promise((resolve) => child.once('close', resolve));
  return { url: `http://127.0.0.1:${port}`, child, said: () => said, ended };
}
/** Starts the program and waits until it serves; throws with what it said when it ends instead. */
export async function serving(of) {
  const program = start({ ...of, port: of.port ?? (await freePort()) });
  let isOver = false;
  void program.ended.then(() => {
    isOver = true;
  });
  for (;;) {
    if (isOver) throw new Error(`the program ended: ${program.said()}`);
    const alive = await fetch(`${program.url}/healthz`).then(
      (answer) => answer.ok,
      () => false,
    );
    if (alive && /first-run\?key=|Lemel is at/.test(program.said())) return program;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}
export function freePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer().once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
    });
  });
}
