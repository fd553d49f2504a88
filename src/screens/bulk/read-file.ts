// A table chosen as a file, as text. Spreadsheets write UTF-8, UTF-16 with a mark, or the old Western code page: what isn't
// sound UTF-8 is taken as the last. Worked example: the byte FC alone is no UTF-8; as windows-1252 it is ü.
import { TEXT_MOST } from '../../domain/bulk/index.ts';

/** Its text, or a sentence that says why there is none. */
export async function readTableFile(file: File): Promise<{ text: string } | { problem: string }> {
  if (file.size > TEXT_MOST) {
    const size = Math.ceil(file.size / 1_000_000);
    return { problem: `“${file.name}” has ${size} MB. Expected a table of at most 5.` };
  }
  try {
    return { text: decoded(new Uint8Array(await file.arrayBuffer())) };
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    return { problem: `“${file.name}” could not be read (${error.name}). Choose it again.` };
  }
}

function decoded(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
