import { evaluate } from '@mdx-js/mdx';
import rehypeMathml from '@daiji256/rehype-mathml';
import type { Element, Root } from 'hast';
import Link from 'next/link';
import type { ReactNode } from 'react';
import * as runtime from 'react/jsx-runtime';
import remarkGfm from 'remark-gfm';
import remarkMath from 'remark-math';
import { visit } from 'unist-util-visit';
import { chanceOf, drawingSchema, titleOf, type WholeKnowledge, type LinkWord } from '@/lib/knowledge';
import { shownShare } from '../_charts';
import { Drawing } from '../_drawings/drawing';
import { Caution } from '../_parts/caution';
import { inSentence } from '../_parts/in-sentence';
import { keptTogether } from '../_parts/kept-together';
import { Moving } from './moving/moving';

export interface PageBodyProps {
  readonly body: string;
  /** The page's own front matter, for figures that the text states. */
  readonly front: object;
  readonly knowledge: WholeKnowledge;
}

/** The text of a page of content/. MDX is code, so only texts of this project go through here. */
export async function PageBody({ body, front, knowledge }: PageBodyProps) {
  const { default: Body } = await evaluate(body, {
    ...runtime,
    // Few pages hold formulas, and reading for them takes a fifth of the time of a page.
    ...(body.includes('$') ? { remarkPlugins: [remarkGfm, remarkMath], rehypePlugins: [rehypeMathml, withoutStyle, formulasAlone, unitsStay, wholeTitles] } : { remarkPlugins: [remarkGfm], rehypePlugins: [withoutStyle, unitsStay, wholeTitles] }),
    development: false,
    format: 'mdx',
    tableCellAlignToStyle: false,
  });
  return (
    <div className="leaf-body">
      <Body components={{
        See: ({ id, as, children }: { readonly id: string; readonly as?: TitleAs; readonly children?: ReactNode }) => <Link prefetch={false} href={`/handbook/${id}`}>{children ?? titleAs(titleOf(knowledge, id), as)}</Link>,
        Stated: ({ at }: { readonly at: string }) => <Stated at={at} front={front} />,
        Draw: (spec: Readonly<Record<string, unknown>>) => <BodyDrawing spec={spec} />,
        Moving: ({ id }: { readonly id: string }) => <Moving id={id} />,
        Caution: ({ children }: { readonly children: ReactNode }) => <Caution>{children}</Caution>,
        a: ({ href, children }: { readonly href?: string; readonly children?: ReactNode }) => <a href={href}>{children}</a>,
      }} />
    </div>
  );
}

/** A figure of the page's own front matter in words, for example "usually (75 %)". An unknown path stops the build. */
function Stated({ at, front }: { readonly at: string; readonly front: object }) {
  const found = at.split('.').reduce<unknown>((value, key) => (typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined), front);
  return <span className="stated">{statedWords(found, at)}</span>;
}

function statedWords(value: unknown, at: string): string {
  if (typeof value === 'string') return value.replaceAll('-', ' ');
  if (typeof value === 'number') return String(value);
  if (typeof value === 'object' && value !== null) {
    const how: unknown = Reflect.get(value, 'how');
    if (typeof how === 'string') return `${how.replaceAll('-', ' ')} (${shownShare(chanceOf(how as LinkWord))})`;
    if (typeof how === 'number') return shownShare(how);
    const median: unknown = Reflect.get(value, 'median');
    const spread: unknown = Reflect.get(value, 'spread');
    if (typeof median === 'number' || typeof median === 'string') return typeof spread === 'number' ? `about ${median}, mostly within a factor of ${spread}` : `about ${median}${typeof spread === 'string' ? ` ± ${spread}` : ''}`;
    const odds: unknown = Reflect.get(value, 'odds');
    if (typeof odds === 'number') return `odds × ${odds}`;
  }
  throw new Error(`Stated at="${at}": got nothing to state, expected a figure of this page's front matter`);
}

function BodyDrawing({ spec }: { readonly spec: Readonly<Record<string, unknown>> }) {
  const plain = Object.fromEntries(Object.entries(spec).filter(([name]) => name !== 'children'));
  return <Drawing spec={drawingSchema.parse(plain)} width={320} height={220} size="figure" />;
}

/** The content policy forbids style attributes; classes carry all looks. */
function withoutStyle() {
  return (tree: Root): void => {
    visit(tree, 'element', (node: Element) => { delete node.properties.style; });
  };
}

/** Letters from which a formula on a line of its own may be wider than a phone; it scrolls there, so the keyboard must reach it. */
const LONG_FORMULA = 30;

/** A formula that is a paragraph of its own stands on its own line; one inside a sentence stays in it. */
function formulasAlone() {
  return (tree: Root): void => {
    visit(tree, 'element', (node: Element) => {
      const [only] = node.children;
      const isAlone = node.tagName === 'p' && node.children.length === 1 && only?.type === 'element' && only.tagName === 'math';
      if (!isAlone) return;
      only.properties.className = 'formula-alone';
      if (lettersOf(only) > LONG_FORMULA) only.properties.tabIndex = 0;
    });
  };
}

function lettersOf(node: Element): number {
  return node.children.reduce((sum, child) => sum + (child.type === 'text' ? child.value.trim().length : child.type === 'element' ? lettersOf(child) : 0), 0);
}

function unitsStay() {
  return (tree: Root): void => {
    visit(tree, 'text', (node) => { node.value = keptTogether(node.value); });
  };
}

/** How a linked title stands: as a question of its own, at the start of a sentence, or (not said) inside one. */
type TitleAs = 'question' | 'start';

/** A link that opens an item of a list begins with a capital; with a time behind it, it is the whole question. */
function wholeTitles() {
  return (tree: Root): void => {
    visit(tree, 'element', (node: Element) => {
      if (node.tagName !== 'li') return;
      const [first, next] = node.children;
      if (first?.type !== 'mdxJsxTextElement' || first.name !== 'See') return;
      const isFollowedByTime = next?.type === 'text' && /^\s\d/.test(next.value);
      first.attributes.push({ type: 'mdxJsxAttribute', name: 'as', value: isFollowedByTime ? 'question' : 'start' });
    });
  };
}

/** Checks are titled with a question; inside a sentence the sentence brings its own stop. */
function titleAs(title: string, as: TitleAs | undefined): string {
  if (as === 'question') return title;
  return (as === 'start' ? title : inSentence(title)).replace(/[?.]$/, '');
}
