// What was tapped and is not acknowledged yet, in this browser's own durable storage: a tap is kept
// before it counts on the page, and goes when the program has said that it is on the disk.

import type { BenchEntry } from "../wire/api";

export interface Tap {
  /** In the order of tapping; given by the storage. */
  seq: number;
  run: string;
  /** The notebook that the run is of, by the id that requests name it with. */
  notebook: string;
  entry: BenchEntry;
}

const name = "keenfall.bench";
const version = 1;
const store = "taps";

function answered<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((done, failed) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
  });
}

export class Taps {
  readonly #database: IDBDatabase;

  private constructor(database: IDBDatabase) {
    this.#database = database;
  }

  static async open(factory: IDBFactory = indexedDB): Promise<Taps> {
    const opening = factory.open(name, version);
    opening.onupgradeneeded = () => {
      opening.result.createObjectStore(store, { keyPath: "seq", autoIncrement: true });
    };
    return new Taps(await answered(opening));
  }

  /** On the disk when this is done. */
  async keep(tap: Omit<Tap, "seq">): Promise<Tap> {
    const work = this.#database.transaction(store, "readwrite", { durability: "strict" });
    const written = new Promise<void>((done, failed) => {
      work.oncomplete = () => done();
      work.onerror = () => failed(work.error);
      work.onabort = () => failed(work.error);
    });
    const seq = await answered(work.objectStore(store).add(tap));
    await written;
    return { ...tap, seq: Number(seq) };
  }

  /** All that wait, of every run, in the order of tapping. */
  async waiting(): Promise<Tap[]> {
    return answered(this.#database.transaction(store).objectStore(store).getAll());
  }

  async forget(taps: readonly Tap[]): Promise<void> {
    const work = this.#database.transaction(store, "readwrite");
    for (const { seq } of taps) work.objectStore(store).delete(seq);
    await new Promise<void>((done, failed) => {
      work.oncomplete = () => done();
      work.onerror = () => failed(work.error);
    });
  }

  close(): void {
    this.#database.close();
  }
}
