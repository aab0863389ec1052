/**
 * Gives the tools around the cells names and keys. The spreadsheet draws most of them as pictures for a mouse: a hint that comes up under
 * the pointer says what they do, and nothing says it to a screen reader; what opens a list is no button and cannot be come to by Tab.
 */
import { type Injector, LocaleService } from '@univerjs/core';
import { IMenuManagerService, MenuManagerPosition } from '@univerjs/preset-sheets-core';
import { sayChoices, TOOLS } from './words';

/** What a tool is called, by the command it gives. */
type ToolNames = ReadonlyMap<string, string>;

function toolNames(injector: Injector): ToolNames {
  const locale = injector.get(LocaleService);
  const items = injector.get(IMenuManagerService).getFlatMenuByPositionKey(MenuManagerPosition.RIBBON);
  const hints = items.flatMap(({ item }): [string, string][] => {
    const hint = item?.tooltip ?? item?.title;
    return item && hint ? [[item.id, locale.t(hint)]] : [];
  });
  return new Map([
    ...hints,
    ['sheet.command.toggle-gridlines', TOOLS.gridLines],
    ['sheet.command.set-range-font-family', TOOLS.font],
    ['sheet.command.set-range-fontsize', TOOLS.fontSize],
  ]);
}

const all = (within: ParentNode, selector: string): HTMLElement[] => [
  ...within.querySelectorAll<HTMLElement>(selector),
];

function call(element: Element | null | undefined, name: string): void {
  if (element && element.getAttribute('aria-label') !== name) element.setAttribute('aria-label', name);
}

/** Makes a button of what is pressed like one, so that keys come to it. */
function pressable(element: Element | null, name: string): void {
  if (!(element instanceof HTMLElement)) return;
  element.role = 'button';
  element.tabIndex = 0;
  call(element, name);
}

/** A tool that does something at once, with a list beside it. */
function nameDouble(tool: HTMLElement, name: string): void {
  pressable(tool.querySelector('.univer-toolbar-button-selector-main'), name);
  pressable(tool.querySelector('[aria-haspopup]'), sayChoices(name));
}

function nameTool(tool: HTMLElement, names: ToolNames): void {
  const name = names.get(tool.dataset['uCommand'] ?? '');
  if (name === undefined) return;
  if (tool.matches('.univer-toolbar-button-selector-root')) return nameDouble(tool, name);
  const field = tool.querySelector('input');
  if (field) {
    call(field, name);
    // A button must not hold a field; a group may be open and closed as well.
    tool.role = 'group';
    call(tool, name);
    return;
  }
  const control = tool.closest<HTMLElement>('button, [aria-haspopup]') ?? tool;
  // What it shows in letters has to be in its name.
  const shown = control.textContent.trim();
  const full = shown && !name.includes(shown) ? `${name}: ${shown}` : name;
  if (control instanceof HTMLButtonElement) call(control, full);
  else pressable(control, full);
}

/** The row of sheets at the foot, with the buttons around it. */
function nameFoot(within: ParentNode): void {
  // Whatever is called so gives the keyboard to the cells as soon as Tab comes to it.
  for (const button of all(within, 'button:is([data-u-comp=button], [data-u-comp=sheet-bar-append-button])')) {
    button.dataset['tool'] = button.dataset['uComp'];
    button.removeAttribute('data-u-comp');
  }
  const buttons = all(within, '[data-tool=sheet-bar-append-button]');
  [TOOLS.addSheet, TOOLS.allSheets, TOOLS.sheetsLeft, TOOLS.sheetsRight].forEach((name, at) => call(buttons[at], name));
  const list = buttons[1]?.closest('[aria-haspopup]');
  if (list) {
    list.role = 'group';
    call(list, TOOLS.allSheets);
  }
  // The buttons beside it do the same.
  const slider = within.querySelector('[role=track]');
  if (!slider) return;
  slider.ariaHidden = 'true';
  slider.role = 'none';
  for (const part of all(slider, '[role]')) {
    part.role = null;
    part.tabIndex = -1;
  }
  const [smaller, larger] = all(within, '[data-tool=button]:not([aria-haspopup])');
  call(smaller, TOOLS.smaller);
  call(larger, TOOLS.larger);
}

function nameFormulaBar(within: ParentNode): void {
  call(within.querySelector('[data-u-comp=defined-name] input'), TOOLS.address);
  pressable(within.querySelector('[data-u-comp=defined-name] [aria-haspopup]'), TOOLS.names);
  call(within.querySelector('[data-u-comp=formula-bar] button:not([data-u-command])'), TOOLS.higher);
}

/** Places that are landmarks of a page, inside what is no page. */
function nameSurroundings(within: ParentNode): void {
  for (const aside of all(within, 'aside')) aside.role = 'none';
  for (const panel of all(within, '[role=complementary]')) {
    panel.role = 'group';
    call(panel, TOOLS.sidePanel);
    // Shut, it is out of sight and its button still a stop of Tab.
    panel.inert = panel.ariaExpanded !== 'true';
  }
  const [said, warned] = all(within, 'section[aria-live]');
  call(said, TOOLS.said);
  call(warned, TOOLS.warned);
}

/** What is typed into: kept for the cells, whose place in the order of Tab it has. */
function nameEditors(within: ParentNode): void {
  // An order of its own would have Tab begin here, ahead of the page's first button.
  for (const canvas of all(within, 'canvas[tabindex="1"]')) canvas.tabIndex = -1;
  for (const [end, name] of [
    ['NORMAL', TOOLS.cells],
    ['FORMULA_BAR', TOOLS.formulaBar],
  ] as const)
    for (const editor of all(document, `[contenteditable][id$=EDITOR__DOCS_${end}]`)) {
      editor.role = 'textbox';
      call(editor, name);
      if (end === 'NORMAL') continue;
      // It stands at the very end of the page, in nothing; F2 in a cell types into the same text.
      editor.tabIndex = -1;
      const place = editor.closest<HTMLElement>('body > *');
      if (place) place.role = 'region';
      call(place, name);
    }
}

/** A list or a panel that opened: called what the tool is called that opened it. */
function nameOpened(): void {
  for (const panel of all(document, '[role=dialog][data-slot=popover-content]')) {
    const opener = document.querySelector(`[aria-controls="${CSS.escape(panel.id)}"]`);
    call(panel, opener?.getAttribute('aria-label') ?? TOOLS.toolbar);
  }
}

function nameAll(container: HTMLElement, names: ToolNames): void {
  // Lists that open stand at the end of the page.
  for (const tool of all(document, '[data-u-command]')) nameTool(tool, names);
  nameFoot(container);
  nameFormulaBar(container);
  nameSurroundings(container);
  nameEditors(container);
  nameOpened();
}

/** Enter and the space bar press what is a button by its role alone; the lists of the toolbar know them already. */
function pressByKeys(event: KeyboardEvent): void {
  const { target, key } = event;
  const isOurs = target instanceof HTMLElement && target.matches('[role=button]:not(button, [aria-haspopup=menu])');
  if (!isOurs || (key !== 'Enter' && key !== ' ')) return;
  event.preventDefault();
  target.click();
}

/** Names what is there, and whatever comes later, as long as the element is on the page. `focus` puts the keyboard into the cells. */
export function nameTools(container: HTMLElement, injector: Injector, focus: () => void): void {
  const names = toolNames(injector);
  let waiting = false;
  const look = (): void => {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(() => {
      waiting = false;
      if (container.isConnected) nameAll(container, names);
      else watching.disconnect();
    });
  };
  const watching = new MutationObserver(look);
  watching.observe(container, { childList: true, subtree: true });
  watching.observe(document.body, { childList: true });
  container.addEventListener('keydown', pressByKeys);
  // Whoever presses one of these with a mouse types on in the cells.
  container.addEventListener('click', ({ target, detail }) => {
    if (detail > 0 && target instanceof Element && target.closest('[data-tool]:not([aria-haspopup] *)')) focus();
  });
  nameAll(container, names);
}
