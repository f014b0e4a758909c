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
    ...(body.includes('$') ? { remarkPlugins: [remarkGfm, remarkMath], rehypePlugins: [rehypeMathml, withoutStyle, reachableFormulas] } : { remarkPlugins: [remarkGfm], rehypePlugins: [withoutStyle] }),
    development: false,
    format: 'mdx',
    tableCellAlignToStyle: false,
  });
  return (
    <div className="leaf-body">
      <Body components={{
        See: ({ id, children }: { readonly id: string; readonly children?: ReactNode }) => <Link prefetch={false} href={`/handbook/${id}`}>{children ?? inText(titleOf(knowledge, id))}</Link>,
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

function reachableFormulas() {
  return (tree: Root): void => {
    visit(tree, 'element', (node: Element) => {
      const [only] = node.children;
      const isAlone = node.tagName === 'p' && node.children.length === 1 && only?.type === 'element' && only.tagName === 'math';
      if (isAlone && lettersOf(only) > LONG_FORMULA) only.properties.tabIndex = 0;
    });
  };
}

function lettersOf(node: Element): number {
  return node.children.reduce((sum, child) => sum + (child.type === 'text' ? child.value.trim().length : child.type === 'element' ? lettersOf(child) : 0), 0);
}

/** A title inside a sentence, which brings its own stop: checks are titled with a question. */
function inText(title: string): string {
  return inSentence(title).replace(/\?$/, '');
}
