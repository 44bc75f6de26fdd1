/** Files inside the file: associated with the whole document (ISO 19005-3, 6.8), each with its relationship, size, date and checksum. */
import { md5 } from '../base/md5.ts';
import type { Attached } from '../model/display.ts';
import type { Pdf } from './pdf-adapter.ts';
import { array, bytesAsHex, dictionary, name, ref, string } from './pdf-write.ts';

/** What the sheet is made from, and what it shows (ISO 32000-2, table 43). */
const RELATIONSHIPS: Readonly<Record<Attached['kind'], string>> = { fitting: '/Source', workshop: '/Source', plan: '/Data' };

/** `date`: as a PDF writes it. Throws Error when two files are of one kind. */
export function attach(pdf: Pdf, files: readonly Attached[], date: string): void {
  if (files.length === 0) return;
  // in the tree of names they stand by their kind, and that has to be sorted
  const sorted = [...files].sort((a, b) => (a.kind < b.kind ? -1 : 1));
  if (sorted.some((file, i) => file.kind === sorted[i + 1]?.kind)) throw new Error('two attached files are of one kind');
  const written = new Map(sorted.map((file) => [file, ref(writeFile(pdf, file, date))]));
  const names = sorted.flatMap((file) => [string(file.kind), written.get(file) ?? '']);
  pdf.catalog({ AF: array(files.map((file) => written.get(file) ?? '')) });
  pdf.names({ EmbeddedFiles: dictionary({ Names: array(names) }) });
}

function writeFile(pdf: Pdf, { kind, name: called, type, says, bytes }: Attached, date: string): number {
  const params = dictionary({ Size: String(bytes.length), ModDate: date, CheckSum: bytesAsHex(md5(bytes)) });
  const stream = ref(pdf.stream({ Type: '/EmbeddedFile', Subtype: name(type), Params: params }, bytes));
  const id = pdf.reserve();
  pdf.pack(
    id,
    dictionary({
      ...{ Type: '/Filespec', AFRelationship: RELATIONSHIPS[kind] },
      ...{ F: string(called), UF: string(called), Desc: string(says) },
      EF: dictionary({ F: stream, UF: stream }),
    }),
  );
  return id;
}
