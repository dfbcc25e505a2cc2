// What was tapped and is not acknowledged yet, in this browser's own durable storage: a tap is kept
// before it counts on the page, and goes when the program has said that it is on the disk, or stays
// as one that it would not take. Beside them what this device must know to go on after it was
// switched off: localStorage may lose its last seconds.

import type { BenchEntry } from "../wire/api";

export interface Tap {
  /** In the order of tapping; given by the storage. */
  seq: number;
  run: string;
  /** The notebook that the run is of, by the id that requests name it with. */
  notebook: string;
  entry: BenchEntry;
}

/** What the program would not take, and why. */
export interface NotTaken {
  entries: BenchEntry[];
  why: string;
}

const name = "keenfall.bench";
const version = 2;
const store = "taps";
const known = "known";
const notTakenName = "not taken";

/** Done once it is on the disk. */
function written(work: IDBTransaction): Promise<void> {
  return new Promise((done, failed) => {
    work.oncomplete = () => done();
    work.onerror = () => failed(work.error);
    work.onabort = () => failed(work.error);
  });
}

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
    opening.onupgradeneeded = ({ oldVersion }) => {
      if (oldVersion < 1)
        opening.result.createObjectStore(store, { keyPath: "seq", autoIncrement: true });
      opening.result.createObjectStore(known);
    };
    return new Taps(await answered(opening));
  }

  /** On the disk when this is done. */
  async keep(tap: Omit<Tap, "seq">): Promise<Tap> {
    const work = this.#writing(store);
    const seq = answered(work.objectStore(store).add(tap));
    await written(work);
    return { ...tap, seq: Number(await seq) };
  }

  /** All that wait, of every run, in the order of tapping. */
  async waiting(): Promise<Tap[]> {
    return answered(this.#database.transaction(store).objectStore(store).getAll());
  }

  async forget(taps: readonly Tap[]): Promise<void> {
    const work = this.#writing(store);
    for (const { seq } of taps) work.objectStore(store).delete(seq);
    await written(work);
  }

  async notTaken(): Promise<NotTaken[]> {
    return (await this.#known<NotTaken[]>(notTakenName)) ?? [];
  }
  /** They wait no more, and are not lost. Out: all that were set aside. */
  async setAside(taps: readonly Tap[], why: string): Promise<NotTaken[]> {
    const work = this.#writing(store, known);
    const before: NotTaken[] = (await answered(work.objectStore(known).get(notTakenName))) ?? [];
    const all = [...before, { entries: taps.map(({ entry }) => entry), why }];
    work.objectStore(known).put(all, notTakenName);
    for (const { seq } of taps) work.objectStore(store).delete(seq);
    await written(work);
    return all;
  }

  /** Of the notebook that is cut from, and by which this device is let in. */
  remembered = (what: "key" | "notebook") => this.#known<string>(what);
  async remember(what: "key" | "notebook", text: string): Promise<void> {
    const work = this.#writing(known);
    work.objectStore(known).put(text, what);
    await written(work);
  }

  #known<T>(what: string): Promise<T | undefined> {
    return answered(this.#database.transaction(known).objectStore(known).get(what));
  }
  #writing(...stores: string[]): IDBTransaction {
    return this.#database.transaction(stores, "readwrite", { durability: "strict" });
  }

  close(): void {
    this.#database.close();
  }
}
