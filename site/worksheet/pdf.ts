import fontkit, { type Font as FontReader } from '@pdf-lib/fontkit';
import {
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFRef,
  PDFString,
  type PDFContext,
} from 'pdf-lib';
import type { CodeItem, FieldItem, Item, Part, Sheet } from './layout.ts';
import { letters } from './letters.ts';
import { faces, paint } from './operators.ts';
import { tracking, type Measure } from './text.ts';
import { assertWritable } from './writable.ts';

/**
 * The one file that knows pdf-lib. Text is set by our own operators with fontkit's kerning, so that what is measured is
 * what is drawn; pdf-lib keeps the objects, embeds the faces and writes the file. The faces come cut to size: asked to
 * cut them itself (`subset`), pdf-lib writes a file in which most letters are blank.
 */

/** TrueType files of the two faces, cut to the letters of the worksheet. */
export interface FontFiles {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** Ligatures and contextual forms would take letters, and the minus of "−6", out of the text that can be read back. */
const features = { liga: false, calt: false, kern: true } as const;

/** The typeface of a sheet: measures and encodes, each text once. */
export interface Typeface {
  readonly measure: Measure;
  readonly encode: (text: string, heavy: boolean) => string;
  readonly fontFiles: FontFiles;
}

interface Shaped {
  /** Argument of the show-text operator. */
  readonly glyphs: string;
  /** Advance of the whole [1/1000 of the size]. */
  readonly width: number;
  readonly count: number;
}

/** One face with what has been asked of it. */
interface Face {
  readonly reader: FontReader;
  readonly shaped: Map<string, Shaped>;
  /** How much closer two letters stand than their advances say [1/1000 of the size]. */
  readonly kerning: Map<string, number>;
}

/** Faces opened before: a page in a browser, or a build, draws many sheets with the same two files. */
const faceOf = new WeakMap<Uint8Array, Face>();

function openFace(bytes: Uint8Array): Face {
  const found = faceOf.get(bytes);
  if (found) return found;
  const made = { reader: fontkit.create(bytes), shaped: new Map(), kerning: new Map() };
  faceOf.set(bytes, made);
  return made;
}

const hex = (glyph: number): string => glyph.toString(16).padStart(4, '0');

/** Figures, their points and signs keep their distance: "7.1" must never look like "71". */
const kerned = (letter: string): boolean => /[\p{L}’”“,.:;-]/u.test(letter);

/**
 * Kerning is looked up pair by pair and kept: the faces have pairs and nothing else, and the reader takes far longer to
 * lay out each text anew.
 */
function kern({ reader, kerning }: Face, first: string, second: string): number {
  if (!kerned(first) || !kerned(second)) return 0;
  const pair = first + second;
  const found = kerning.get(pair);
  if (found !== undefined) return found;
  const { glyphs, positions } = reader.layout(pair, features);
  const closer =
    ((glyphs[0]?.advanceWidth ?? 0) - (positions[0]?.xAdvance ?? 0)) * (1000 / reader.unitsPerEm);
  kerning.set(pair, Math.round(closer));
  return Math.round(closer);
}

function shape(face: Face, text: string): Shaped {
  const found = face.shaped.get(text);
  if (found) return found;
  assertWritable(text);
  const scale = 1000 / face.reader.unitsPerEm;
  const all = [...text];
  let [out, open, width] = ['', '', 0];
  all.forEach((letter, index) => {
    const { id, advanceWidth } = face.reader.glyphForCodePoint(letter.codePointAt(0) ?? 0);
    open += hex(id);
    const next = all[index + 1];
    // The operator takes away what it is given, in thousandths of the size.
    const closer = next === undefined ? 0 : kern(face, letter, next);
    width += advanceWidth * scale - closer;
    if (closer === 0) return;
    out += `<${open}>${closer}`;
    open = '';
  });
  const made = { glyphs: `[${out}${open === '' ? '' : `<${open}>`}]`, width, count: all.length };
  face.shaped.set(text, made);
  return made;
}

/** Opens the two faces. Texts with letters that they lack throw. */
export function openTypeface(fontFiles: FontFiles): Typeface {
  const regular = openFace(fontFiles.regular);
  const heavy = openFace(fontFiles.bold);
  return {
    measure: (text, size, inBold) => {
      const { width, count } = shape(inBold ? heavy : regular, text);
      return (width / 1000 + count * tracking(size)) * size;
    },
    encode: (text, inBold) => shape(inBold ? heavy : regular, text).glyphs,
    fontFiles,
  };
}

/** What a file says of itself. */
export interface About {
  readonly title: string;
  readonly subject: string;
  /** BCP 47 tag of the words. */
  readonly language: string;
  /** Stands for the moment of making, so that the same bench gives the same bytes. */
  readonly date: Date;
}

const producer = 'winter bench guide';

/** Bits of an annotation's flags (ISO 32000-1, table 165): printed with the page. */
const printed = 4;

const utf16 = (text: string): PDFHexString => PDFHexString.fromText(text);

const escapeXml = (text: string): string =>
  text.replace(/[<>&"]/gu, (letter) => `&#${letter.codePointAt(0) ?? 0};`);

/** Metadata as PDF/UA asks for it (ISO 14289-1, 7.1): the title, and that the file is made to be read aloud. */
const metadata = ({ title, subject, language, date }: About): string =>
  `<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
<dc:format>application/pdf</dc:format>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${escapeXml(title)}</rdf:li></rdf:Alt></dc:title>
<dc:description><rdf:Alt><rdf:li xml:lang="x-default">${escapeXml(subject)}</rdf:li></rdf:Alt></dc:description>
<dc:language><rdf:Bag><rdf:li>${escapeXml(language)}</rdf:li></rdf:Bag></dc:language>
<xmp:CreateDate>${date.toISOString()}</xmp:CreateDate>
<xmp:ModifyDate>${date.toISOString()}</xmp:ModifyDate>
<xmp:CreatorTool>${producer}</xmp:CreatorTool>
<pdf:Producer>${producer}</pdf:Producer>
<pdfuaid:part>1</pdfuaid:part>
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>`;

/** Something on a page that belongs to a part of the sheet: marked content, or an annotation. */
type Mark =
  | { readonly page: PDFRef; readonly content: number }
  | { readonly page: PDFRef; readonly annotation: PDFRef };

/**
 * The tree of a tagged file: what is a heading, a table, a list, a drawing with its words, in the order of reading.
 * Marks are noted while pages are drawn; the tree is written at the end.
 */
class Structure {
  readonly marks = new Map<Part, Mark[]>();
  readonly context: PDFContext;
  /** Reference of each part's element, given out before the elements are made. */
  readonly elements = new Map<Part, PDFRef>();
  /** By key of the parent tree: the parts of a page's content by number, or the part of an annotation. */
  readonly parents: (Part | readonly Part[])[] = [];

  constructor(context: PDFContext) {
    this.context = context;
  }

  note(part: Part, mark: Mark): void {
    const marks = this.marks.get(part);
    if (marks) marks.push(mark);
    else this.marks.set(part, [mark]);
  }

  element(part: Part): PDFRef {
    const found = this.elements.get(part);
    if (found) return found;
    const made = this.context.nextRef();
    this.elements.set(part, made);
    return made;
  }

  write(document: Part): PDFRef {
    const root = this.context.nextRef();
    this.writeElement(document, root);
    const numbers = this.parents.flatMap((parent, key) => [
      key,
      Array.isArray(parent)
        ? this.context.register(this.context.obj(parent.map((one: Part) => this.element(one))))
        : this.element(parent as Part),
    ]);
    this.context.assign(
      root,
      this.context.obj({
        Type: 'StructTreeRoot',
        K: [this.element(document)],
        ParentTree: { Nums: numbers },
        ParentTreeNextKey: this.parents.length,
      }),
    );
    return root;
  }

  private writeElement(part: Part, parent: PDFRef): void {
    const { context } = this;
    const marks = this.marks.get(part) ?? [];
    for (const child of part.children) this.writeElement(child, this.element(part));
    const kids = [
      ...part.children.map((child) => this.element(child)),
      ...marks.map((mark) =>
        'annotation' in mark
          ? context.obj({ Type: 'OBJR', Obj: mark.annotation, Pg: mark.page })
          : context.obj({ Type: 'MCR', Pg: mark.page, MCID: mark.content }),
      ),
    ];
    const attributes = [
      ...(part.scope ? [context.obj({ O: 'Table', Scope: part.scope })] : []),
      ...(part.numbering ? [context.obj({ O: 'List', ListNumbering: part.numbering })] : []),
    ];
    const element = context.obj({ Type: 'StructElem', S: part.tag, P: parent, K: kids });
    if (part.alt !== undefined) element.set(PDFName.of('Alt'), utf16(part.alt));
    if (attributes.length > 0) element.set(PDFName.of('A'), context.obj(attributes));
    context.assign(this.element(part), element);
  }
}

/** A blank as form field and its place on the page in one (ISO 32000-1, 12.7.3). */
function fieldDict(context: PDFContext, { name, hint, size }: FieldItem): PDFDict {
  const dict = context.obj({ Type: 'Annot', Subtype: 'Widget', FT: 'Tx', F: printed, MK: {} });
  dict.set(PDFName.of('T'), PDFString.of(name));
  dict.set(PDFName.of('TU'), utf16(hint));
  dict.set(PDFName.of('DA'), PDFString.of(`/${formFace} ${size} Tf 0 g`));
  return dict;
}

function linkDict(context: PDFContext, { link, part }: CodeItem): PDFDict {
  const action = context.obj({ S: 'URI' });
  action.set(PDFName.of('URI'), PDFString.of(link));
  const dict = context.obj({ Type: 'Annot', Subtype: 'Link', F: printed, Border: [0, 0, 0], A: action });
  dict.set(PDFName.of('Contents'), utf16(part?.children[0]?.alt ?? link));
  return dict;
}

/** Flag of a face that is read by the codes of its letters (ISO 32000-1, table 123). */
const nonsymbolic = 32;

/** Name of the face that viewers write with in the form. */
const formFace = 'Form';

/**
 * The regular face once more, as viewers need it for what is typed in: by the codes of Windows Latin 1 instead of by
 * glyph. It shares the embedded file, so that nothing on the sheet is ever set in a font that is not in it.
 */
function formFont(context: PDFContext, composite: PDFRef, font: FontReader): PDFRef {
  const cid = context
    .lookup(composite, PDFDict)
    .lookup(PDFName.of('DescendantFonts'), PDFArray)
    .lookup(0, PDFDict);
  const descriptor = cid.lookup(PDFName.of('FontDescriptor'), PDFDict).clone();
  descriptor.set(PDFName.of('Flags'), context.obj(nonsymbolic));
  const [first, last] = [0x20, 0xff];
  const decoder = new TextDecoder('windows-1252');
  const widths = Array.from({ length: last - first + 1 }, (_, index) => {
    const letter = decoder.decode(new Uint8Array([first + index])).codePointAt(0) ?? 0;
    const advance = font.hasGlyphForCodePoint(letter) ? font.glyphForCodePoint(letter).advanceWidth : 0;
    return Math.round((advance * 1000) / font.unitsPerEm);
  });
  return context.register(
    context.obj({
      Type: 'Font',
      Subtype: 'TrueType',
      BaseFont: cid.get(PDFName.of('BaseFont')),
      FirstChar: first,
      LastChar: last,
      Widths: widths,
      Encoding: 'WinAnsiEncoding',
      FontDescriptor: context.register(descriptor),
    }),
  );
}

/** Most entries that one block of a character map may have. */
const mapBlock = 100;

/** What each glyph stands for, for search, copying and reading aloud. */
function unicodeMap(font: FontReader): string {
  const letterOf = new Map<number, string>();
  for (const letter of letters) {
    const { id } = font.glyphForCodePoint(letter.codePointAt(0) ?? 0);
    if (!letterOf.has(id)) letterOf.set(id, letter);
  }
  const entries = [...letterOf].map(
    ([glyph, letter]) => `<${hex(glyph)}> <${hex(letter.codePointAt(0) ?? 0)}>`,
  );
  const blocks: string[] = [];
  for (let from = 0; from < entries.length; from += mapBlock) {
    const block = entries.slice(from, from + mapBlock);
    blocks.push(`${block.length} beginbfchar\n${block.join('\n')}\nendbfchar`);
  }
  return `/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <ffff>
endcodespacerange
${blocks.join('\n')}
endcmap
CMapName currentdict /CMap defineresource pop
end
end`;
}

/** Faces as they stand in a file; to compress one takes longer than all else in the writing of a sheet. */
const compressed = new WeakMap<Uint8Array, Uint8Array>();

/** Lets a file take a face that was compressed before as it is. */
function keepCompressed(context: PDFContext, { regular, bold }: FontFiles): void {
  const flate = context.flateStream.bind(context);
  context.flateStream = (contents, dict = {}) => {
    if (typeof contents === 'string' || (contents !== regular && contents !== bold))
      return flate(contents, dict);
    const before = compressed.get(contents);
    if (before) return context.stream(before, { ...dict, Filter: 'FlateDecode' });
    const made = flate(contents, dict);
    compressed.set(contents, made.contents);
    return made;
  };
}

/** Embeds a face and maps its glyphs to letters in blocks of the size that the standard allows. */
async function embedFace(file: PDFDocument, bytes: Uint8Array): Promise<{ ref: PDFRef; reader: FontReader }> {
  const { ref } = await file.embedFont(bytes, { features });
  await file.flush();
  const { context } = file;
  const { reader } = openFace(bytes);
  const map = context.lookup(ref, PDFDict).get(PDFName.of('ToUnicode'));
  if (!(map instanceof PDFRef)) throw new Error('pdf-lib embedded a face without a map to letters');
  context.assign(map, context.flateStream(unicodeMap(reader)));
  return { ref, reader };
}

/** Writes a laid-out sheet as a tagged, fillable PDF. The same sheet gives the same bytes. */
export async function writePdf(sheet: Sheet, about: About, typeface: Typeface): Promise<Uint8Array> {
  const file = await PDFDocument.create({ updateMetadata: false });
  file.registerFontkit(fontkit);
  file.setTitle(about.title, { showInWindowTitleBar: true });
  file.setSubject(about.subject);
  file.setLanguage(about.language);
  file.setProducer(producer);
  file.setCreator(producer);
  file.setCreationDate(about.date);
  file.setModificationDate(about.date);

  const { context, catalog } = file;
  keepCompressed(context, typeface.fontFiles);
  const regular = await embedFace(file, typeface.fontFiles.regular);
  const heavy = await embedFace(file, typeface.fontFiles.bold);

  const structure = new Structure(context);
  const fields: PDFRef[] = [];
  sheet.pages.forEach((page) => {
    const leaf = file.addPage([page.width, page.height]);
    const parts: Part[] = [];
    const key = structure.parents.push(parts) - 1;
    const annotations: PDFRef[] = [];
    const content: string[] = [];
    for (const item of page.items) {
      const painted = paint(item, page.height, typeface.encode, typeface.measure);
      if (painted.length > 0) content.push(...marked(item, painted, parts, structure, leaf.ref));
      if (item.kind !== 'field' && item.kind !== 'code') continue;
      const dict = item.kind === 'field' ? fieldDict(context, item) : linkDict(context, item);
      const { x, y, width, height } = item.box;
      dict.set(PDFName.of('Rect'), context.obj([x, page.height - y - height, x + width, page.height - y]));
      dict.set(PDFName.of('P'), leaf.ref);
      const ref = context.register(dict);
      annotations.push(ref);
      if (item.kind === 'field') fields.push(ref);
      if (!item.part) continue;
      dict.set(PDFName.of('StructParent'), context.obj(structure.parents.push(item.part) - 1));
      structure.note(item.part, { page: leaf.ref, annotation: ref });
    }
    const { node } = leaf;
    node.set(PDFName.of('Contents'), context.register(context.flateStream(content.join('\n'))));
    node.set(
      PDFName.of('Resources'),
      context.obj({ Font: { [faces.regular]: regular.ref, [faces.bold]: heavy.ref } }),
    );
    node.set(PDFName.of('StructParents'), context.obj(key));
    node.set(PDFName.of('Tabs'), PDFName.of('S'));
    if (annotations.length > 0) node.set(PDFName.of('Annots'), context.obj(annotations));
  });

  catalog.set(PDFName.of('StructTreeRoot'), structure.write(sheet.document));
  catalog.set(PDFName.of('MarkInfo'), context.obj({ Marked: true }));
  catalog.set(
    PDFName.of('Metadata'),
    context.register(
      context.stream(new TextEncoder().encode(metadata(about)), { Type: 'Metadata', Subtype: 'XML' }),
    ),
  );
  if (fields.length > 0) {
    const face = formFont(context, regular.ref, regular.reader);
    const form = context.obj({ Fields: fields, DR: { Font: { [formFace]: face } } });
    form.set(PDFName.of('DA'), PDFString.of(`/${formFace} 12 Tf 0 g`));
    catalog.set(PDFName.of('AcroForm'), context.register(form));
  }
  return file.save({
    updateFieldAppearances: false,
    addDefaultPage: false,
    objectsPerTick: Number.POSITIVE_INFINITY,
  });
}

/** Operators between marks that say which part of the sheet they show; ornament is marked as such. */
function marked(
  item: Item,
  painted: readonly string[],
  parts: Part[],
  structure: Structure,
  page: PDFRef,
): string[] {
  const shown = item.kind === 'code' ? item.picture : item.part;
  if (!shown) return ['/Artifact BMC', ...painted, 'EMC'];
  const content = parts.push(shown) - 1;
  structure.note(shown, { page, content });
  return [`/${shown.tag} <</MCID ${content}>> BDC`, ...painted, 'EMC'];
}
