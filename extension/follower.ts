// What a panel shows follows what is typed.
import * as vscode from 'vscode';

export interface Followed {
  /** Typing pauses for so long before it is asked for anew, ms. */
  readonly pause: number;
  isSeen(): boolean;
  /** Shows the newest; what it waited for counts no more once `token` is cancelled. */
  renew(token: vscode.CancellationToken): Promise<void>;
}

/** Renews something once typing pauses, while it is seen; what was begun is given up when something newer comes. */
export class Follower implements vscode.Disposable {
  private readonly followed: Followed;
  private asking = new vscode.CancellationTokenSource();
  private timer: ReturnType<typeof setTimeout> | undefined;
  /** Something has changed since it was renewed last. */
  private isOld = true;

  constructor(followed: Followed) {
    this.followed = followed;
  }

  changed(): void {
    this.isOld = true;
    clearTimeout(this.timer);
    if (this.followed.isSeen()) this.timer = setTimeout(() => void this.renew(), this.followed.pause);
  }

  /** It has come in sight. */
  seen(): void {
    if (this.isOld) this.changed();
  }

  async renew(): Promise<void> {
    this.asking.cancel();
    this.asking.dispose();
    const asking = (this.asking = new vscode.CancellationTokenSource());
    this.isOld = false;
    await this.followed.renew(asking.token);
  }

  dispose(): void {
    clearTimeout(this.timer);
    this.asking.cancel();
    this.asking.dispose();
  }
}
