/** The element of a page that has this id. */
export function byId<E extends HTMLElement = HTMLElement>(id: string): E {
  return document.getElementById(id) as E
}

/** A new element with properties and children; text stays text. */
export function make<K extends keyof HTMLElementTagNameMap>(
  name: K,
  properties: Partial<HTMLElementTagNameMap[K]> = {},
  ...children: (Node | string)[]
): HTMLElementTagNameMap[K] {
  const element = Object.assign(document.createElement(name), properties)
  element.append(...children)
  return element
}
