/** Does something in one tab at a time; false when another tab is at it. Without Web Locks every tab goes ahead:
 * the server knows an event by its id, so sending twice is wasteful but harmless. */
export async function inOneTab(name: string, work: () => Promise<void>): Promise<boolean> {
  const { locks } = navigator as { locks?: LockManager };
  if (!locks) {
    await work();
    return true;
  }
  return locks.request(name, { ifAvailable: true }, async (lock) => {
    if (!lock) return false;
    await work();
    return true;
  });
}

/** Sends messages to the other tabs of this app and receives theirs. */
export class Tabs<Message> {
  private readonly channel = typeof BroadcastChannel === "undefined" ? null : new BroadcastChannel("amberbench");

  constructor(receive: (message: Message) => void) {
    if (this.channel) this.channel.onmessage = ({ data }: MessageEvent<Message>) => receive(data);
  }

  send(message: Message): void {
    this.channel?.postMessage(message);
  }
}
