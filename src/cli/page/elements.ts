/** Elements of the page that the program fills. */

import type { ComponentChild } from "preact";
import { render } from "preact";

export const byId = <Kind extends HTMLElement>(id: string): Kind => document.getElementById(id) as Kind;

/** Containers whose still content has given way to the program's. */
const ours = new WeakSet<Element>();

/** Renders into a container that came with the page; what stood there before goes. */
export function fill(container: Element | null, content: ComponentChild): void {
  if (container === null) return;
  if (!ours.has(container)) {
    container.replaceChildren();
    ours.add(container);
  }
  render(content, container);
}

const found = new Map<string, Element>();

/** The element of a camera that carries `data-NAME`; sought once, as long as it stands in the page. */
export function marked(name: string, index: number): Element | null {
  const selector = `[data-${name}="${index}"]`;
  const known = found.get(selector);
  if (known?.isConnected === true) return known;
  const element = document.querySelector(selector);
  if (element !== null) found.set(selector, element);
  return element;
}
