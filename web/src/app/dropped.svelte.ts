// Tables from the disk on their way to the screen where they are looked through.

import type { TableSource } from "../wire/api";

class Dropped {
  sources: TableSource[] = $state.raw([]);
}

export const dropped = new Dropped();
