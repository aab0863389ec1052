/** The cells of a workbook file, read from its parts as XML: shares nothing with the library or with ours. */
import { unzip } from '../save/unzip';

export interface XmlCell {
  readonly value: string | number | boolean | null;
  readonly formula: string | null;
  /** Its number format's code; null where it is the general one. */
  readonly format: string | null;
}

export interface XmlSheet {
  readonly name: string;
  readonly cells: ReadonlyMap<string, XmlCell>;
  readonly merges: readonly string[];
  /** In points, by the row's number, of rows that say it; `set` where a person has set it. */
  readonly heights: ReadonlyMap<number, { readonly points: number; readonly set: boolean }>;
  readonly xml: string;
}

export interface XmlBook {
  readonly sheets: readonly XmlSheet[];
  readonly parts: ReadonlyMap<string, string>;
  /** Tables as `name ref`. */
  readonly tables: readonly string[];
  /** Colours that highlights fill cells with, one after another; a fill that leaves its pattern unsaid is a solid one there. */
  readonly highlightFills: readonly string[];
  readonly from1904: boolean;
}

const attribute = (tag: string, name: string): string | null => {
  const found = new RegExp(`\\b${name}\\s*=\\s*"([^"]*)"`).exec(tag)?.[1];
  return found === undefined ? null : plain(found);
};

function plain(text: string): string {
  return text
    .replace(/&#x([0-9a-f]+);/gi, (_, code: string) => String.fromCodePoint(parseInt(code, 16)))
    .replace(/&#(\d+);/g, (_, code: string) => String.fromCodePoint(Number(code)))
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&apos;/g, "'")
    .replace(/&amp;/g, '&');
}

/** Text of an item, without the reading aids of Asian scripts; `_x0041_` stands for a letter. */
function textIn(xml: string): string {
  const own = xml.replace(/<rPh\b[\s\S]*?<\/rPh>/g, '');
  const pieces = [...own.matchAll(/<t(?:\s[^>]*)?>([\s\S]*?)<\/t>/g)].map(([, text = '']) => plain(text));
  return pieces.join('').replace(/_x([0-9a-f]{4})_/gi, (_, code: string) => String.fromCharCode(parseInt(code, 16)));
}

export function xmlBook(bytes: Uint8Array): XmlBook {
  const parts = unzip(bytes);
  const part = (name: string): string => parts.get(name) ?? '';
  const workbook = part('xl/workbook.xml');
  const targets = new Map(
    [...part('xl/_rels/workbook.xml.rels').matchAll(/<Relationship\b[^>]*>/g)].map(([tag]) => [
      attribute(tag, 'Id') ?? '',
      (attribute(tag, 'Target') ?? '').replace(/^\/?(xl\/)?/, 'xl/'),
    ]),
  );
  const shared = [
    ...([...targets.values()].map(part).find((xml) => xml.includes('<sst')) ?? '').matchAll(
      /<si>([\s\S]*?)<\/si>|<si\/>/g,
    ),
  ].map(([, item = '']) => textIn(item));
  const formats = formatsIn(part('xl/styles.xml'));
  const sheets = [...workbook.matchAll(/<sheet\b[^>]*>/g)].map(([tag]): XmlSheet => {
    const xml = part(targets.get(attribute(tag, 'r:id') ?? '') ?? '');
    return {
      name: attribute(tag, 'name') ?? '',
      cells: cellsIn(xml, shared, formats),
      merges: [...xml.matchAll(/<mergeCell\b[^>]*>/g)].map(([merge]) => attribute(merge, 'ref') ?? '').sort(),
      heights: heightsIn(xml),
      xml,
    };
  });
  const tables = [...parts].flatMap(([name, xml]) => {
    const tag = /^xl\/tables\//.test(name) ? /<table\b[^>]*>/.exec(xml)?.[0] : undefined;
    return tag === undefined ? [] : [`${attribute(tag, 'displayName') ?? ''} ${attribute(tag, 'ref') ?? ''}`];
  });
  return {
    sheets,
    parts,
    tables: tables.sort(),
    highlightFills: fillsIn(part('xl/styles.xml'), sheets),
    from1904: /date1904="(1|true)"/.test(workbook),
  };
}

function heightsIn(xml: string): XmlSheet['heights'] {
  return new Map(
    [...xml.matchAll(/<row\b[^>]*>/g)].flatMap(([tag]) => {
      const points = attribute(tag, 'ht');
      const set = /^(1|true)$/.test(attribute(tag, 'customHeight') ?? '');
      return points === null ? [] : [[Number(attribute(tag, 'r')), { points: Number(points), set }] as const];
    }),
  );
}

function fillsIn(styles: string, sheets: readonly XmlSheet[]): string[] {
  const looks = /<dxfs\b[\s\S]*?<\/dxfs>/.exec(styles)?.[0].match(/<dxf\b[\s\S]*?(?:<\/dxf>|\/>)/g) ?? [];
  const rules = sheets.flatMap(({ xml }) => xml.match(/<cfRule\b[^>]*>/g) ?? []);
  return rules.flatMap((rule) => {
    const look = looks[Number(attribute(rule, 'dxfId') ?? NaN)] ?? '';
    const [, tag = '', inner = ''] = /<patternFill\b([^>]*)>([\s\S]*?)<\/patternFill>/.exec(look) ?? [];
    const solid = (attribute(tag, 'patternType') ?? 'solid') === 'solid';
    const colours = ['bgColor', 'fgColor'].map((name) => new RegExp(`<${name}\\b[^>]*>`).exec(inner)?.[0] ?? '');
    const rgb = colours.map((colour) => attribute(colour, 'rgb')).find((each) => each !== null);
    return solid && rgb ? [rgb.slice(-6).toUpperCase()] : [];
  });
}

function cellsIn(xml: string, shared: readonly string[], formats: readonly (string | null)[]): Map<string, XmlCell> {
  const cells = new Map<string, XmlCell>();
  for (const [, tag = '', inner = ''] of xml.matchAll(/<c\b([^>]*?)(?:\/>|>([\s\S]*?)<\/c>)/g)) {
    const type = attribute(tag, 't') ?? 'n';
    const raw = /<v(?:\s[^>]*)?>([\s\S]*?)<\/v>/.exec(inner)?.[1];
    const formula = /<f\b[^>]*?(?:\/>|>([\s\S]*?)<\/f>)/.exec(inner);
    const value = valueOf(type, raw === undefined ? null : plain(raw), inner, shared);
    const format = formats[Number(attribute(tag, 's') ?? 0)] ?? null;
    if (value === null && !formula && format === null) continue;
    cells.set(attribute(tag, 'r') ?? '', { value, formula: formula ? plain(formula[1] ?? '') : null, format });
  }
  return cells;
}

function valueOf(type: string, raw: string | null, inner: string, shared: readonly string[]): XmlCell['value'] {
  if (type === 'inlineStr') return textIn(inner);
  if (raw === null || raw === '') return type === 'str' ? raw : null;
  if (type === 's') return shared[Number(raw)] ?? null;
  if (type === 'b') return raw === '1';
  return type === 'n'
    ? Number(raw)
    : raw.replace(/_x([0-9a-f]{4})_/gi, (_, code: string) => String.fromCharCode(parseInt(code, 16)));
}

/* Built-in formats (ECMA-376 Part 1, 18.8.30); 14 and 22 are shown in the computer's own order, and said here as an American's. */
const BUILT_IN: Readonly<Record<number, string>> = {
  1: '0',
  2: '0.00',
  3: '#,##0',
  4: '#,##0.00',
  9: '0%',
  10: '0.00%',
  11: '0.00E+00',
  12: '# ?/?',
  13: '# ??/??',
  14: 'm/d/yyyy',
  15: 'd-mmm-yy',
  16: 'd-mmm',
  17: 'mmm-yy',
  18: 'h:mm AM/PM',
  19: 'h:mm:ss AM/PM',
  20: 'h:mm',
  21: 'h:mm:ss',
  22: 'm/d/yyyy h:mm',
  45: 'mm:ss',
  46: '[h]:mm:ss',
  49: '@',
};

/** For each style of a cell, its format. */
function formatsIn(styles: string): (string | null)[] {
  const own = new Map(
    [...styles.matchAll(/<numFmt\b[^>]*>/g)].map(([tag]) => [
      Number(attribute(tag, 'numFmtId')),
      attribute(tag, 'formatCode') ?? '',
    ]),
  );
  const list = /<cellXfs\b[\s\S]*?<\/cellXfs>/.exec(styles)?.[0] ?? '';
  return [...list.matchAll(/<xf\b[^>]*>/g)].map(([tag]) => {
    const id = Number(attribute(tag, 'numFmtId') ?? 0);
    const code = own.get(id) ?? BUILT_IN[id] ?? (id === 0 ? null : `built-in ${id}`);
    return code === 'General' ? null : code;
  });
}
