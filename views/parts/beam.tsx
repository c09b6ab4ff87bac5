// The beam: what came in on the left pan, what is accounted for on the right; its tilt and band are those of the job's own levels.
export interface BeamProps {
  readonly state: 'open' | 'level' | 'off';
  /** −1 to 1: right pan up to right pan down; within a half is within what the balances and usual dust explain. */
  readonly tilt: number;
  readonly sentence: string;
}

const REACH = 26;

export function Beam({ state, tilt, sentence }: BeamProps) {
  const rise = Math.round(Math.max(-1, Math.min(1, tilt)) * REACH);
  const [left, right] = [70 - rise, 70 + rise];
  const pan = (x: number, y: number) => `M${x} ${y}l-34 46h68z`;
  return (
    <svg class={`beam ${state}`} viewBox="0 0 720 150" role="img" aria-label={sentence}>
      <title>{sentence}</title>
      <rect class="band" x="150" y={70 - REACH / 2} width="420" height={REACH} />
      <path class="post" d="M360 70V128M330 129h60" />
      <path class="arm" d={`M150 ${left}L570 ${right}`} />
      <path class="pan" d={`${pan(150, left)}${pan(570, right)}`} />
      <circle class="hub" cx="360" cy="70" r="5" />
    </svg>
  );
}
