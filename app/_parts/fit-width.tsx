'use client';
import { useEffect, useRef, useState, type ReactNode } from 'react';

/**
 * Gives its drawing the width there is. Drawings are never scaled, because their words would be; they are drawn anew.
 * While the page is being built, and on paper, the width is `usual`.
 */
export function FitWidth({ usual, children }: { readonly usual: number; readonly children: (width: number) => ReactNode }) {
  const box = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(usual);
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const observer = new ResizeObserver(([entry]) => { if (entry && entry.contentRect.width > 0) setWidth(Math.floor(entry.contentRect.width)); });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return <div ref={box} className="fit-width">{children(width)}</div>;
}
