// A file that the program made, handed to the browser to keep.

/** "The matting bench" as html is "the-matting-bench.html". */
export function fileName(title: string, ending: string): string {
  const plain = title
    .toLowerCase()
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60);
  return `${plain || "trial"}.${ending}`;
}

export function saveAs(content: Blob, name: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(content);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
