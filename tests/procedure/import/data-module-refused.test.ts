/** Data modules that are not read, and how the door is kept. */
import { describe, expect, it } from 'vitest';
import { LARGEST_XML } from '../../../src/procedure/import/xml.ts';
import { MODULE, imported, refusal } from './pump-cover-module.ts';

describe('a file that cannot be read is refused in words', () => {
  it.each([
    [
      'a tag that is not closed',
      MODULE.replace('</mainProcedure>', ''),
      /^Line \d+, column \d+: it is not well-formed XML: /,
    ],
    ['half a file', MODULE.slice(0, MODULE.length / 2), /not well-formed XML/],
    [
      'another encoding than UTF-8',
      new TextDecoder().decode(Buffer.from(MODULE.replace('N.m', 'N\u00B7m'), 'latin1')),
      /^Line \d+: it holds a character that is not in UTF-8/,
    ],
    ['no XML', 'torque the ring', /^Line 1, column \d+: it is not well-formed XML/],
    ['nothing', '', /not well-formed XML/],
    [
      'an older module',
      '<dmodule><content><proced/></content></dmodule>',
      /<proced>: expected a procedural data module/,
    ],
    ['a descriptive module', '<dmodule><content><description/></content></dmodule>', /Its content is <description>/],
    ['a web page', '<html/>', /It begins with <html>/],
    ['no step', MODULE.replace(/<mainProcedure>[^]*<\/mainProcedure>/, '<mainProcedure/>'), /holds no step/],
    ['too large a file', `${MODULE}${' '.repeat(LARGEST_XML)}`, /characters; at most/],
    ['endless nesting', '<a>'.repeat(100_000), /nested more than 64 levels deep/],
    ['endless elements', `<a>${'<b/>'.repeat(100_001)}</a>`, /more than 100000 elements/],
  ])('%s', (_, xml, words) => {
    expect(refusal(xml)).toMatch(words);
  });

  it('a broken module is named by its line', () => {
    const lines = MODULE.split('\n');
    const at80 = lines.map((line, i) => (i === 79 ? `${line}</title>` : line)).join('\n');
    expect(refusal(at80)).toMatch(/^Line 80, /);
  });
});

describe('entities', () => {
  const withDoctype = (subset: string, text: string): string =>
    MODULE.replace('<dmodule>', `<!DOCTYPE dmodule [${subset}]>\n<dmodule>`).replace('A scored face leaks.', text);

  it.each([
    ['of a file (XXE)', '<!ENTITY x SYSTEM "file:///etc/passwd">', '&x;'],
    ['of an address', '<!ENTITY x PUBLIC "p" "http://localhost/x">', '&x;'],
    ['of parameters', '<!ENTITY % p SYSTEM "http://localhost/x.dtd"> %p;', ''],
    [
      'that grow without end (billion laughs)',
      `<!ENTITY l0 "lol">${Array.from({ length: 9 }, (_, i) => `<!ENTITY l${i + 1} "${`&l${i};`.repeat(10)}">`).join('')}`,
      '&l9;',
    ],
    ['that are declared and not used', '<!ENTITY x "y">', ''],
    ['that hide behind a picture', '<!ENTITY x "a NDATA b"><!ENTITY p SYSTEM "p.cgm" NDATA cgm>', '&x;'],
  ])('%s are refused', (_, subset, text) => {
    expect(refusal(withDoctype(subset, text))).toMatch(/^Line \d+: the document declares entities/);
  });

  it('that nobody declared are refused as well', () => {
    expect(refusal(withDoctype('', '&boom;'))).toMatch(/not well-formed XML: Named entity/);
  });

  it('of pictures are let pass: they cannot be put into text', () => {
    const pictures = '<!NOTATION cgm SYSTEM "cgm"><!ENTITY ICN-INVENTED-1 SYSTEM "p.cgm" NDATA cgm>';
    expect(imported(withDoctype(pictures, 'x')).draft.title).toBe('Invented pump cover: Install procedure');
    expect(refusal(withDoctype(pictures, '&ICN-INVENTED-1;'))).toMatch(/Named entity/);
  });

  it('of XML itself are read', () => {
    const { draft } = imported(withDoctype('', 'A &lt;scored&gt; face &amp; edge &#108;eaks.'));
    expect(JSON.stringify(draft)).toContain('A <scored> face & edge leaks.');
  });
});
