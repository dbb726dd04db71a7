/** Labels to stick on the equipment, as PDF: twenty-one a page, each with its name, load and a code that opens it. */
// oxlint-disable-next-line import/no-named-as-default -- the types of pdfkit know the default alone
import PDFDocument from 'pdfkit';
import QRCode from 'qrcode';
import { loadIn } from '@footboard/shared/capabilities/aids/load-words';
import type { ItemDescription } from '@footboard/shared/capabilities/aids/values';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import type { Language, Units } from '@footboard/shared/capabilities/wards/values';
import { labelWords } from './label-words.ts';

export interface Label {
  readonly item: string;
  readonly name: string;
  readonly kind: string;
  readonly load: string | null;
  /** What its code opens. */
  readonly address: string;
}

/** A walking aid with no load entered has no line for it; whatever else bears a person says to look at the plate. */
const loadOf = (is: ItemDescription, units: Units, language: Language): string | null => {
  const say = labelWords(language);
  if (is.safeLoadKg !== null) {
    // The system bears what its weakest part does (users' job 5a).
    return say('load', { load: loadIn(Math.min(is.safeLoadKg, is.barLoadKg ?? Infinity), units) });
  }
  return is.kind === 'walking-aid' ? null : say('load-unknown');
};

/** Of the ward's own, in the order of the list: what is borrowed has its owner's label. @param origin what a phone opens: "https://board.ward.example" */
export const labelsOf = (
  ward: Pick<WardState, 'ward' | 'items' | 'borrowed' | 'lent' | 'units' | 'language'>,
  origin: string,
): Label[] =>
  [
    ...[...ward.items].filter(([item]) => !ward.borrowed.has(item)),
    ...[...ward.lent].map(([item, { is }]) => [item, is] as const),
  ].map(([item, is]) => ({
    item,
    name: is.label,
    kind: `${labelWords(ward.language)(is.kind)}, ${is.model}`,
    load: loadOf(is, ward.units, ward.language),
    address: `${origin.replace(/\/$/, '')}/wards/${encodeURIComponent(ward.ward)}/equipment/${encodeURIComponent(item)}`,
  }));

/** A4, in points. */
const PAGE = { width: 595.28, height: 841.89 } as const;
const EDGE = 28;
const HEAD = 40;
const ACROSS = 3;
const DOWN = 7;
const CODE = 72;

export async function labelsPdf(sheet: {
  readonly ward: string;
  readonly language: Language;
  readonly labels: readonly Label[];
}): Promise<Buffer> {
  const say = labelWords(sheet.language);
  const aPage = ACROSS * DOWN;
  const pages = Math.max(1, Math.ceil(sheet.labels.length / aPage));
  const width = (PAGE.width - 2 * EDGE) / ACROSS;
  const height = (PAGE.height - 2 * EDGE - HEAD) / DOWN;
  const pdf = new PDFDocument({ size: 'A4', margin: 0, autoFirstPage: false, lang: sheet.language });
  const done = new Promise<Buffer>((resolve, reject) => {
    const parts: Buffer[] = [];
    pdf.on('data', (part: Buffer) => parts.push(part));
    pdf.on('end', () => resolve(Buffer.concat(parts)));
    pdf.on('error', reject);
  });
  pdf.info.Title = `${sheet.ward}: ${say('title')}`;
  const write = (font: 'Helvetica' | 'Helvetica-Bold', size: number) => pdf.font(font).fontSize(size);
  const head = (n: number) => {
    pdf.addPage();
    write('Helvetica-Bold', 12).text(`${sheet.ward}: ${say('title')}`, EDGE, EDGE, { lineBreak: false });
    write('Helvetica', 8).text(say('how-to'), EDGE, EDGE + 16, { lineBreak: false });
    write('Helvetica', 8).text(say('page', { n, all: pages }), EDGE, EDGE + 2, {
      width: PAGE.width - 2 * EDGE,
      align: 'right',
      lineBreak: false,
    });
  };
  for (const [i, label] of sheet.labels.entries()) {
    const place = i % aPage;
    if (place === 0) head(i / aPage + 1);
    const x = EDGE + (place % ACROSS) * width;
    const y = EDGE + HEAD + Math.floor(place / ACROSS) * height;
    pdf.rect(x, y, width, height).lineWidth(0.4).dash(2, { space: 2 }).stroke('#000').undash();
    const code = await QRCode.toBuffer(label.address, { errorCorrectionLevel: 'Q', margin: 0, scale: 5 });
    pdf.image(code, x + 8, y + (height - CODE) / 2, { width: CODE, height: CODE });
    const words = { width: width - CODE - 22, ellipsis: true } as const;
    const left = x + CODE + 15;
    write('Helvetica-Bold', 13).text(label.name, left, y + 12, { ...words, height: 34 });
    write('Helvetica', 7.5).text(label.kind, left, y + 46, { ...words, height: 19 });
    if (label.load !== null)
      write('Helvetica-Bold', 9.5).text(label.load.replace(/ (?=kg|lb)/g, '\u00a0'), left, y + 67, {
        ...words,
        height: 24,
      });
  }
  if (sheet.labels.length === 0) head(1);
  pdf.end();
  return done;
}
