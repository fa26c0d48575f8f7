/** What this device remembers of a job after it was last found to be the same here and on the server. */
export interface Agreed {
  /** The server's mark of that copy; undefined where the server gives none. */
  readonly tag: string | undefined;
  /** The mark of the copy here, see `markOf`. */
  readonly mark: string;
  /** A later look at the server showed the same copy still there. Until then the server's word alone stands for it. */
  readonly confirmed: boolean;
}

/** One job as this device has it. */
export interface LocalEntry {
  readonly id: string;
  /** Undefined where the job is not on this device, or no longer. */
  readonly mark: string | undefined;
  /** Made up to show the book: never sent. */
  readonly invented: boolean;
  readonly agreed: Agreed | undefined;
}

/** One job file as the shared folder lists it. */
export interface RemoteEntry {
  readonly id: string;
  /** Changes whenever the file does; undefined where the server tells nothing of the kind. */
  readonly tag: string | undefined;
  readonly length: number | undefined;
}

/** What is to be done about one job in this round. */
export type Action =
  /** Send it: only this device has something new. */
  | 'push'
  /** Fetch it: only the server has something new, or what was sent is to be looked at once more. */
  | 'pull'
  /** Fetch it, join the entries of both and send what the server lacks. */
  | 'merge'
  | 'nothing'
  /** Not touched; why, says `because`. */
  | 'leave';

export interface Step {
  readonly id: string;
  readonly action: Action;
  readonly because?: 'invented' | 'removed-here' | 'gone-from-server';
  /** As listed: the copy that a `push` must find there, undefined where it must find none. */
  readonly tag?: string | undefined;
}
