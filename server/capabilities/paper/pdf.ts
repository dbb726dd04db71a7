/** A sheet as PDF: up to nine beds a page, as many on each, in the order of the ward, room to write, a code a bed. */
// oxlint-disable-next-line import/no-named-as-default -- the types of pdfkit know the default alone
import PDFDocument from 'pdfkit';
import QRCode from 'qrcode';
import type { Language } from '@footboard/shared/capabilities/wards/values';
import type { SheetLine } from './sheet.ts';
import { paperWords } from './words.ts';

export interface SheetPaper {
  readonly ward: string;
  readonly serial: string;
  readonly language: Language;
  readonly demo: boolean;
  /** Instants in words of the ward's clock. */
  readonly known: string;
  readonly printed: string;
  readonly until: string;
  /** Known up to longer ago than a screen would call live. */
  readonly stale: boolean;
  readonly lines: readonly SheetLine[];
  /** Said once, above all beds. */
  readonly ofAll: readonly string[];
  /** Where the code of a bed leads. */
  readonly address: (bed: string) => string;
}

const PAGE = { width: 595.28, height: 841.89 } as const;
const EDGE = 28;
const HEAD = 84;
const FOOT = 40;
const MOST_A_PAGE = 9;
/** Sizes for what to mind: smaller only where it would be cut off. */
const MIND_SIZES = [6.8, 6.2, 5.6];
const CODE = 50;
const LEFT = 92;

export async function sheetPdf(paper: SheetPaper): Promise<Buffer> {
  const say = paperWords(paper.language);
  const pages = Math.max(1, Math.ceil(paper.lines.length / MOST_A_PAGE));
  const aPage = Math.max(1, Math.ceil(paper.lines.length / pages));
  const pdf = new PDFDocument({ size: 'A4', margin: 0, autoFirstPage: false, lang: paper.language });
  const done = new Promise<Buffer>((resolve, reject) => {
    const parts: Buffer[] = [];
    pdf.on('data', (part: Buffer) => parts.push(part));
    pdf.on('end', () => resolve(Buffer.concat(parts)));
    pdf.on('error', reject);
  });
  pdf.info.Title = `${paper.ward} ${paper.serial}`;

  const write = (font: 'Helvetica' | 'Helvetica-Bold', size: number) => pdf.font(font).fontSize(size);
  const line = (x1: number, y: number, x2: number, width = 0.5) =>
    pdf.moveTo(x1, y).lineTo(x2, y).lineWidth(width).stroke('#000');

  const ofAll = paper.ofAll.length > 0 ? `${say('of-all')} ${paper.ofAll.join('; ')}` : '';
  const whole = { width: PAGE.width - 2 * EDGE };
  // As high as it needs to be: nothing that is said of everybody is cut off.
  const headHigh = HEAD + (ofAll ? write('Helvetica-Bold', 7).heightOfString(ofAll, whole) : 0);
  const rowHigh = (PAGE.height - headHigh - FOOT - EDGE) / aPage;

  const head = (page: number) => {
    pdf.addPage();
    if (paper.demo) {
      write('Helvetica-Bold', 130).fillColor('#000', 0.06).text('DEMO', 70, 340, { lineBreak: false });
      pdf.fillColor('#000', 1);
    }
    write('Helvetica-Bold', 15).text(`${paper.ward}: ${say('title')}`, EDGE, 24, { lineBreak: false });
    write('Helvetica-Bold', 10).text(`${say('until')} ${paper.until}`, EDGE, 44, { lineBreak: false });
    write('Helvetica', 8).text(
      `${say('known')} ${paper.known}. ${say('printed')} ${paper.printed}. ${say('until-bed')}`,
      EDGE,
      57,
      { lineBreak: false },
    );
    const note = paper.stale ? say('stale') : say('reenter');
    write(paper.stale ? 'Helvetica-Bold' : 'Helvetica', 8).text(note, EDGE, 68, { lineBreak: false });
    if (ofAll) write('Helvetica-Bold', 7).text(ofAll, EDGE, HEAD - 5, whole);
    write('Helvetica', 8).text(`${paper.serial}, ${say('page', { n: page, all: pages })}`, 300, 26, {
      width: PAGE.width - EDGE - 300,
      align: 'right',
      lineBreak: false,
    });
    const foot = paper.demo ? `${say('demo')} ${say('standing')}` : say('standing');
    write('Helvetica', 7.5).text(foot, EDGE, PAGE.height - FOOT, { width: PAGE.width - 2 * EDGE });
  };

  for (const [i, row] of paper.lines.entries()) {
    if (i % aPage === 0) head(i / aPage + 1);
    const top = headHigh + (i % aPage) * rowHigh;
    line(EDGE, top, PAGE.width - EDGE, 1);
    write('Helvetica-Bold', 20).text(row.label, EDGE, top + 5, {
      width: LEFT - 8,
      height: 22,
      ellipsis: true,
    });
    write('Helvetica', 7).text(
      [...row.standing, ...(row.until ? [`${say('until').toLowerCase()} ${row.until}`] : [])].join('\n'),
      EDGE,
      top + 27,
      { width: LEFT - 6, height: rowHigh - 30 },
    );
    const x = EDGE + LEFT;
    const width = PAGE.width - EDGE - x - CODE - 8;
    pdf.y = top + 5;
    if (row.stops.length > 0) {
      write('Helvetica-Bold', 8.5).text(row.stops.join('. '), x, pdf.y, {
        width,
        height: 22,
        ellipsis: true,
      });
    }
    for (const { of, words } of row.plans) {
      write('Helvetica-Bold', 7.2).text(`${of}  `, x, pdf.y, { width, continued: words.length > 0 });
      for (const [nth, { task, how }] of words.entries()) {
        const last = nth === words.length - 1;
        if (task) write('Helvetica-Bold', 7.2).text(`${task}: `, { width, continued: true });
        write('Helvetica', 7.2).text(last ? how : `${how}.  `, { width, continued: !last });
      }
    }
    if (row.minds.length > 0) {
      const room = Math.max(9, top + rowHigh - 16 - pdf.y);
      const words = row.minds.join('; ');
      const fits = MIND_SIZES.find(
        (size) => write('Helvetica', size).heightOfString(words, { width }) <= room,
      );
      write('Helvetica', fits ?? MIND_SIZES.at(-1)!).text(words, x, pdf.y, {
        width,
        height: room,
        ellipsis: true,
      });
    }
    const hand = top + rowHigh - 3;
    write('Helvetica', 6).text(say('time'), x, hand - 7, { lineBreak: false });
    write('Helvetica', 6).text(say('what'), x + 66, hand - 7, { lineBreak: false });
    write('Helvetica', 6).text(say('who'), x + width - 60, hand - 7, { lineBreak: false });
    line(x + 18, hand, x + 60, 0.4);
    line(x + 110, hand, x + width - 66, 0.4);
    line(x + width - 46, hand, x + width, 0.4);
    const code = await QRCode.toBuffer(paper.address(row.bed), {
      errorCorrectionLevel: 'M',
      margin: 0,
      scale: 4,
    });
    pdf.image(code, PAGE.width - EDGE - CODE, top + 6, { width: CODE, height: CODE });
  }
  if (paper.lines.length === 0) head(1);
  pdf.end();
  return done;
}
