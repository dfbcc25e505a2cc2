// A file as the program takes it: byte for byte, so that a page reads it as the command does.

import type { TableSource } from "../wire/api";

function base64(bytes: Uint8Array): string {
  const piece = 0x8000;
  let binary = "";
  for (let from = 0; from < bytes.length; from += piece) {
    binary += String.fromCharCode(...bytes.subarray(from, from + piece));
  }
  return btoa(binary);
}

export async function tableSource(file: Pick<File, "name" | "arrayBuffer">): Promise<TableSource> {
  return { name: file.name, base64: base64(new Uint8Array(await file.arrayBuffer())) };
}
