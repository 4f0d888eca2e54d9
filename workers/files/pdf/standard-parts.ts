import { hashBytes } from '../../../src/graph/keys.ts';
import type { PdfBuilder } from './builder.ts';
import { greyProfile } from './grey-profile.ts';
import { textString } from './objects.ts';

const PRODUCER = 'Keyblock';

/**
 * What PDF/X-4 (ISO 15930-7) asks for beside the page: output intent with its profile, XMP metadata that agree with
 * the document information, and a file identifier.
 *
 * @param input.madeAt ISO 8601 in UTC
 * @returns entries of the catalogue and of the trailer
 */
export function standardParts(
  pdf: PdfBuilder,
  input: { title: string; madeAt: string; trapped: boolean },
): { catalogue: string; trailer: string } {
  const { title, trapped } = input;
  const madeAt = `${input.madeAt.slice(0, 19)}Z`;
  const date = `(D:${madeAt.replace(/[-:T]/g, '').slice(0, 14)}Z)`;
  const id = hashBytes(new TextEncoder().encode(`${title} ${madeAt}`)).slice(0, 32);
  const profile = pdf.stream('/N 1', greyProfile());
  const intent = pdf.add(
    `<< /Type /OutputIntent /S /GTS_PDFX /OutputConditionIdentifier (Custom) /RegistryName () ` +
      `/Info (Spot inks; the profile describes one ink alone) /DestOutputProfile ${profile} >>`,
  );
  const metadata = pdf.stream(
    '/Type /Metadata /Subtype /XML',
    new TextEncoder().encode(xmp(title, madeAt, trapped, id)),
  );
  const info = pdf.add(
    `<< /Title ${textString(title)} /Creator (${PRODUCER}) /Producer (${PRODUCER}) ` +
      `/CreationDate ${date} /ModDate ${date} /Trapped /${trapped ? 'True' : 'False'} >>`,
  );
  return {
    catalogue: `/OutputIntents [${intent}] /Metadata ${metadata}`,
    trailer: `/Info ${info} /ID [<${id}> <${id}>]`,
  };
}

/** An XMP packet (ISO 16684-1). */
function xmp(title: string, madeAt: string, trapped: boolean, id: string): string {
  const text = title.replace(/[&<>]/g, (mark) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;' })[mark]!);
  return `<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:xmpMM="http://ns.adobe.com/xap/1.0/mm/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:pdfxid="http://www.npes.org/pdfx/ns/id/">
<dc:format>application/pdf</dc:format>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${text}</rdf:li></rdf:Alt></dc:title>
<xmp:CreatorTool>${PRODUCER}</xmp:CreatorTool>
<xmp:CreateDate>${madeAt}</xmp:CreateDate>
<xmp:ModifyDate>${madeAt}</xmp:ModifyDate>
<xmp:MetadataDate>${madeAt}</xmp:MetadataDate>
<xmpMM:DocumentID>uuid:${id}</xmpMM:DocumentID>
<xmpMM:RenditionClass>default</xmpMM:RenditionClass>
<xmpMM:VersionID>1</xmpMM:VersionID>
<pdf:Producer>${PRODUCER}</pdf:Producer>
<pdf:Trapped>${trapped ? 'True' : 'False'}</pdf:Trapped>
<pdfxid:GTS_PDFXVersion>PDF/X-4</pdfxid:GTS_PDFXVersion>
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="w"?>`;
}
