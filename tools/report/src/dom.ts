// Small helpers to make elements.

type Attributes = Record<string, string | boolean | ((event: Event) => void)>;

/** An element with attributes ("onclick" and the like take functions) and children. */
export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...children: (Node | string)[]
): HTMLElementTagNameMap[Tag] {
  const out = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") out.addEventListener(name.slice(2), value);
    else if (typeof value === "boolean") out.toggleAttribute(name, value);
    else out.setAttribute(name, value);
  }
  out.append(...children);
  return out;
}

/** A selection list with its label. */
export function chooser(label: string, id: string, options: [string, string][], changed: (value: string) => void) {
  const select = element("select", { id, onchange: () => changed(select.value) });
  for (const [value, text] of options) select.append(element("option", { value }, text));
  return { select, box: element("label", { class: "field" }, element("span", {}, label), select) };
}

/** A check box; `colour` is that of the items it shows. */
export function tick(label: string, id: string, on: boolean, changed: (on: boolean) => void, colour = ""): HTMLElement {
  const box = element("input", { type: "checkbox", id, onchange: () => changed(box.checked) });
  box.checked = on;
  const swatch = colour ? [element("span", { class: "swatch", style: `background:${colour}`, "aria-hidden": "true" })] : [];
  return element("label", { class: "tick" }, box, ...swatch, label);
}
