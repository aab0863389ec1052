import { writeXlsx } from 'hucre/xlsx';
import { describe, expect, test } from 'vitest';
import { readBook } from '../../../src/workbook/embedded/open/read';
import type { RefusalCode } from '../../../src/workbook/embedded/open/refusal';
import { sayRefusal, sayUnkept, type WhyNotOpened } from '../../../src/tryout/open/words';
import { zipOf } from './zipOf';
import { unkeptByParts } from '../../../src/workbook/embedded/open/unkept';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const codeOf = async (file: Uint8Array): Promise<unknown> =>
  readBook(file).then(
    () => null,
    (error: { code?: unknown }) => error.code,
  );

const small = (): Promise<Uint8Array> => writeXlsx({ sheets: [{ name: 'A', rows: [[1, 'two']] }] });

describe('a file that is not opened is told apart', () => {
  test.each<[string, Uint8Array, RefusalCode]>([
    ['nothing at all', bytes(''), 'empty'],
    ['separated text', bytes('item;grams\nA;50'), 'text'],
    [
      'the old format',
      Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...new Array<number>(512).fill(0)]),
      'oldFormat',
    ],
    ['another zip file', zipOf([{ name: 'word/document.xml', content: bytes('<a/>') }]), 'otherFile'],
    ['binary cells', zipOf([{ name: 'xl/workbook.bin', content: bytes('x') }]), 'binaryCells'],
    ['a zip file that ends too early', bytes('PK\u0003\u0004 and then nothing'), 'broken'],
    ['more than is read', new Uint8Array(25_000_001).fill(80), 'tooLarge'],
  ])('%s', async (_, file, code) => expect(await codeOf(file)).toBe(code));

  test('a bomb: it says that it is huge', async () => {
    const file = zipOf([
      { name: '[Content_Types].xml', content: bytes('<Types/>') },
      { name: 'xl/workbook.xml', content: bytes('<workbook/>'), says: 900_000_000 },
    ]);
    expect(await codeOf(file)).toBe('unpacksTooLarge');
  });

  test('a bomb: it says that it is small, and is not', async () => {
    const zeros = new Uint8Array(30_000_000);
    const rels =
      '<Relationships><Relationship Id="r1" Type="http://x/officeDocument" Target="xl/workbook.xml"/></Relationships>';
    const file = zipOf([
      { name: '[Content_Types].xml', content: bytes('<Types/>') },
      { name: '_rels/.rels', content: bytes(rels) },
      { name: 'xl/workbook.xml', content: zeros, says: 500 },
    ]);
    expect(await codeOf(file)).toBe('unpacksTooLarge');
  });

  test('a workbook cut off anywhere, or with bytes changed, is read whole or refused, and never anything else', async () => {
    const whole = await small();
    for (let cut = 0; cut < whole.length; cut += 97) {
      const code = await codeOf(whole.slice(0, cut));
      expect(['empty', 'text', 'broken'], String(cut)).toContain(code);
    }
    for (let at = 40; at < whole.length; at += 61) {
      const hurt = whole.slice();
      hurt[at] = (hurt[at] ?? 0) ^ 0x55;
      const code = await codeOf(hurt);
      expect([null, 'broken', 'otherFile', 'unpacksTooLarge', 'tooManyCells'], String(at)).toContain(code);
    }
  }, 60_000);

  test('each is told in sentences that say what to do', () => {
    const codes: WhyNotOpened[] = [
      'empty',
      'tooLarge',
      'unpacksTooLarge',
      'tooManyCells',
      'locked',
      'oldFormat',
      'binaryCells',
      'text',
      'otherFile',
      'broken',
      'notLoaded',
    ];
    for (const code of codes) {
      expect(sayRefusal(code, 'rack.xlsx')).toMatch(
        /^.*rack\.xlsx.*\. .*(open|Copy).*\. What stood on the page is as it was\.$/s,
      );
    }
  });
});

test('what a copy will be without is told by the parts of the file', () => {
  const names = [
    'xl/vbaProject.bin',
    'xl/charts/chart1.xml',
    'xl/charts/style1.xml',
    'xl/charts/chart2.xml',
    'xl/media/image1.png',
    'xl/pivotTables/pivotTable1.xml',
    'xl/externalLinks/externalLink1.xml',
    'xl/externalLinks/_rels/externalLink1.xml.rels',
    'xl/embeddings/oleObject1.bin',
    'xl/worksheets/sheet1.xml',
  ];
  const found = unkeptByParts(names.map((name) => ({ name, method: 8, packedBytes: 1, bytes: 1, at: 0 })));
  expect(sayUnkept(found)).toEqual([
    'macros',
    '2 charts',
    '1 picture',
    '1 pivot table: its cells stay, as values',
    'links to 1 other workbook',
    '1 embedded file',
  ]);
});
