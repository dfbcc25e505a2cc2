// A file as the program takes it: spreadsheets as they are, other files as text.

import type { TableSource } from "../wire/api";

const spreadsheets = /\.(xlsx|ods|xls|fods)$/i;

function base64(bytes: Uint8Array): string {
  const piece = 0x8000;
  let binary = "";
  for (let from = 0; from < bytes.length; from += piece) {
    binary += String.fromCharCode(...bytes.subarray(from, from + piece));
  }
  return btoa(binary);
}

/** UTF-8, or what tables of older programs are in. */
function decoded(bytes: Uint8Array): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

export async function tableSource(file: Pick<File, "name" | "arrayBuffer">): Promise<TableSource> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const { name } = file;
  return spreadsheets.test(name) ? { name, base64: base64(bytes) } : { name, text: decoded(bytes) };
}
