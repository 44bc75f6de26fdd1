/**
 * The metadata packet: title, dates and mark as in the info dictionary, and what the file claims to be: PDF/A-3a (ISO 19005-3) and PDF/UA-1
 * (ISO 14289-1). The second is no property that PDF/A knows, so its schema is described too (ISO 19005-3, 6.6.2.3).
 */

export type XmpFacts = {
  readonly title: string;
  readonly keywords: string;
  readonly language: string;
  readonly producer: string;
  readonly date: Date;
};

export function xmp({ title, keywords, language, producer, date }: XmpFacts): string {
  const when = `${date.toISOString().slice(0, 'yyyy-mm-ddThh:mm:ss'.length)}Z`;
  const own = [
    ['dc', `<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${escaped(title)}</rdf:li></rdf:Alt></dc:title>`],
    ['dc', `<dc:language><rdf:Bag><rdf:li>${escaped(language)}</rdf:li></rdf:Bag></dc:language>`],
    ['xmp', `<xmp:CreateDate>${when}</xmp:CreateDate><xmp:ModifyDate>${when}</xmp:ModifyDate>`],
    ['xmp', `<xmp:CreatorTool>${escaped(producer)}</xmp:CreatorTool>`],
    ['pdf', `<pdf:Producer>${escaped(producer)}</pdf:Producer><pdf:Keywords>${escaped(keywords)}</pdf:Keywords>`],
    ['pdfaid', '<pdfaid:part>3</pdfaid:part><pdfaid:conformance>A</pdfaid:conformance>'],
    ['pdfuaid', '<pdfuaid:part>1</pdfuaid:part>'],
  ] as const;
  const described = own.map(([space, body]) => `<rdf:Description rdf:about="" xmlns:${space}="${SPACES[space]}">${body}</rdf:Description>`);
  return [
    '<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>',
    '<x:xmpmeta xmlns:x="adobe:ns:meta/">',
    '<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">',
    ...described,
    EXTENSION,
    '</rdf:RDF>',
    '</x:xmpmeta>',
    '<?xpacket end="w"?>',
  ].join('\n');
}

const SPACES = {
  dc: 'http://purl.org/dc/elements/1.1/',
  xmp: 'http://ns.adobe.com/xap/1.0/',
  pdf: 'http://ns.adobe.com/pdf/1.3/',
  pdfaid: 'http://www.aiim.org/pdfa/ns/id/',
  pdfuaid: 'http://www.aiim.org/pdfua/ns/id/',
} as const;

const EXTENSION = `<rdf:Description rdf:about="" xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/" xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#" xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
<pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
<pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>
<pdfaSchema:namespaceURI>${SPACES.pdfuaid}</pdfaSchema:namespaceURI>
<pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
<pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
<pdfaProperty:name>part</pdfaProperty:name>
<pdfaProperty:valueType>Integer</pdfaProperty:valueType>
<pdfaProperty:category>internal</pdfaProperty:category>
<pdfaProperty:description>Part of ISO 14289 that the file conforms to</pdfaProperty:description>
</rdf:li></rdf:Seq></pdfaSchema:property>
</rdf:li></rdf:Bag></pdfaExtension:schemas>
</rdf:Description>`;

function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
}
