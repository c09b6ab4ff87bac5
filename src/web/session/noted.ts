// What the program's log says of who came in and who was kept out: a code that never changes, and the ids of a person and a screen. No names, no
// addresses with what stands in them, nothing typed.

/** Codes of what is noted; whoever watches the log looks for these. */
export type Happening =
  | 'signed_in'
  | 'locked'
  | 'pin_wrong'
  | 'password_wrong'
  | 'not_tried'
  | 'screen_enrolled'
  | 'screen_withdrawn'
  | 'screen_unknown'
  | 'link_refused'
  | 'role_refused'
  | 'other_site'
  | 'other_host';
export interface Noted {
  readonly happened: Happening;
  readonly person?: string;
  readonly screen?: string;
  /** The route as it is declared: "GET /jobs/:job". */
  readonly route?: string;
}
