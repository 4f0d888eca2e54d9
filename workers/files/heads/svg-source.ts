import type { Complain } from '../bad-file.ts';
import { latinText } from '../bytes.ts';

const MOST_BYTES = 64 * 1024 * 1024;
const MOST_UNFOLDED = 1_000_000;

/** The text of an SVG, cut at the attributes of its root. */
export interface SvgSource {
  /** Up to and with the name of the root. */
  before: string;
  rootAttributes: string;
  /** From the end of the root's tag, comments removed. */
  after: string;
}

const ATTRIBUTE = /([\w:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;
const DOCTYPE = /<!DOCTYPE[^[>]*(?:\[(.*?)\]\s*)?>/sy;
const PROLOG = /\s+|<\?.*?\?>|<!--.*?-->/sy;
const ROOT = /<(?:[\w.-]+:)?svg(?=[\s/>])/y;
const ROOT_ATTRIBUTES = /(?:\s+[\w:.-]+\s*=\s*(?:"[^"]*"|'[^']*'))*/y;
const ENTITY = /<!ENTITY\s+([\w:.-]+)\s+(?:"([^"]*)"|'([^']*)')/g;
const REFERENCE = /&([\w:.-]+);/g;

/**
 * Finds the root of an SVG.
 * @throws BadFile for what is no SVG, and for entities that would unfold into very much text
 */
export function readSvgSource(bytes: Uint8Array, complain: Complain): SvgSource {
  if (bytes.length > MOST_BYTES) throw complain('the SVG is over 64 MB; simplify it or save it as PNG');
  const text = decodeText(bytes, complain);
  let at = 0;
  let subset = '';
  for (let match = skip(text, at); match; match = skip(text, at)) {
    subset += match[1] ?? '';
    at += match[0].length;
  }
  const root = matchAt(ROOT, text, at);
  if (!root) throw complain('not an SVG picture (its root is not svg); save it as SVG, PNG or TIFF');
  const attributesAt = at + root[0].length;
  const rootAttributes = matchAt(ROOT_ATTRIBUTES, text, attributesAt)![0];
  const source = {
    before: text.slice(0, attributesAt),
    rootAttributes,
    after: text.slice(attributesAt + rootAttributes.length).replace(/<!--.*?-->/gs, ''),
  };
  if (!/^\s*\/?>/.test(source.after))
    throw complain('the SVG is broken (its first tag is not closed); save it again');
  refuseBomb(subset, rootAttributes + source.after, complain);
  return source;
}

/** The attributes of a tag in the order they stand. */
export function attributesOf(tag: string): { name: string; value: string; text: string }[] {
  return [...tag.matchAll(ATTRIBUTE)].map((match) => ({
    name: match[1]!,
    value: match[2] ?? match[3]!,
    text: match[0],
  }));
}

function skip(text: string, at: number) {
  return matchAt(PROLOG, text, at) ?? matchAt(DOCTYPE, text, at);
}

function matchAt(pattern: RegExp, text: string, at: number) {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

function decodeText(bytes: Uint8Array, complain: Complain): string {
  const start = latinText(bytes.subarray(0, 200));
  const declared = /^\s*<\?xml[^>]*\sencoding\s*=\s*["']([\w.-]+)["']/.exec(start)?.[1];
  const byMark = start.startsWith('\xff\xfe')
    ? 'utf-16le'
    : start.startsWith('\xfe\xff')
      ? 'utf-16be'
      : undefined;
  try {
    return new TextDecoder(byMark ?? declared ?? 'utf-8', { fatal: true }).decode(bytes.slice());
  } catch {
    throw complain('the SVG is broken (its text encoding cannot be read); save it as UTF-8');
  }
}

function refuseBomb(subset: string, body: string, complain: Complain): void {
  const lengths = new Map<string, number>();
  let unfolded = 0;
  for (const [, name, double, single] of subset.matchAll(ENTITY)) {
    const value = double ?? single!;
    if (/&[^#]/.test(value)) unfolded = Number.POSITIVE_INFINITY;
    lengths.set(name!, value.length);
  }
  if (lengths.size === 0) return;
  for (const [, name] of body.matchAll(REFERENCE)) unfolded += lengths.get(name!) ?? 0;
  if (unfolded > MOST_UNFOLDED) {
    throw complain(
      'the SVG is broken (its entities unfold into too much text); save it again without entities',
    );
  }
}
