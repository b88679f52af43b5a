/**
 * Babel plugin, before Solid's own: elements of HTML and SVG in TSX become calls (src/ui/element.ts). Components and fragments
 * are left to Solid's compiler, and so is how what they are given follows its signals.
 */
import path from 'node:path';
import type { NodePath, PluginObj, types } from '@babel/core';

const RUNTIME = path.resolve(import.meta.dirname, '../ui/element.ts');

/** Elements of drawings; `a`, `style` and `script` are those of HTML. */
const OF_DRAWINGS = new Set(
  'svg g path rect circle ellipse line polyline polygon text tspan title desc defs use marker pattern clipPath mask'.split(
    ' ',
  ),
);

/** How the calls are imported: names that no file has. */
const NAMES = { element: '_element', drawing: '_drawing', either: '_either' } as const;

export function elementCalls({ types: t }: { readonly types: typeof types }): PluginObj {
  return {
    name: 'element-calls',
    visitor: {
      Program(program) {
        const made = new WeakSet<types.Node>();
        const used = new Set<keyof typeof NAMES>();
        // From the inside out: the children of an element are expressions by then.
        program.traverse({
          JSXElement: {
            exit(element) {
              const { name } = element.node.openingElement;
              if (!t.isJSXIdentifier(name) || !/^[a-z]/.test(name.name)) return;
              place(element, callFor(element, name.name));
            },
          },
        });
        for (const name of used) program.unshiftContainer('body', importOf(name));

        function callFor(element: NodePath<types.JSXElement>, name: string): types.CallExpression {
          const call = callOf(OF_DRAWINGS.has(name) ? 'drawing' : 'element', [
            t.stringLiteral(name),
            ...argumentsOf(attributesOf(element), childrenOf(element.node.children)),
          ]);
          made.add(call);
          return call;
        }

        function callOf(name: keyof typeof NAMES, values: types.Expression[]): types.CallExpression {
          used.add(name);
          return t.callExpression(t.identifier(NAMES[name]), values);
        }

        /** Among several children of a component, Solid would make it anew when a signal changes, unless it is told not to. */
        function place(element: NodePath<types.JSXElement>, call: types.CallExpression): void {
          const { parent } = element;
          if (!t.isJSXElement(parent) && !t.isJSXFragment(parent)) {
            element.replaceWith(call);
            return;
          }
          const isOneOfMany = childCount(parent.children) > 1 || t.isJSXFragment(parent);
          if (isOneOfMany) t.addComment(call, 'leading', '@once');
          element.replaceWith(t.jsxExpressionContainer(call));
        }

        function attributesOf({ node }: NodePath<types.JSXElement>): types.Expression | null {
          const { attributes } = node.openingElement;
          if (attributes.length === 0) return null;
          const properties = attributes.map((attribute) => {
            if (!t.isJSXAttribute(attribute)) throw new Error('An element takes no attributes that are spread.');
            const name = t.isJSXNamespacedName(attribute.name)
              ? `${attribute.name.namespace.name}:${attribute.name.name.name}`
              : attribute.name.name;
            return { name, value: valueOf(name, attribute.value) };
          });
          const follows = ({ name, value }: (typeof properties)[number]): boolean =>
            name === 'ref' || name.startsWith('on') ? false : changes(value);
          // What stands fast comes first: a value is held against the type and the range of its field.
          const inOrder = [...properties.filter((each) => !follows(each)), ...properties.filter(follows)];
          const object = t.objectExpression(
            inOrder.map(({ name, value }) =>
              t.objectProperty(t.isValidIdentifier(name) ? t.identifier(name) : t.stringLiteral(name), value),
            ),
          );
          return properties.some(follows) ? t.arrowFunctionExpression([], object) : object;
        }

        function valueOf(name: string, value: types.JSXAttribute['value']): types.Expression {
          if (value === null || value === undefined) return t.booleanLiteral(true);
          if (!t.isJSXExpressionContainer(value)) return value;
          if (t.isJSXEmptyExpression(value.expression)) return t.booleanLiteral(true);
          // A variable is filled; a function is called.
          if (name !== 'ref' || !t.isIdentifier(value.expression)) return value.expression;
          return isVariable(value.expression.name)
            ? t.arrowFunctionExpression(
                [t.identifier('_node')],
                t.assignmentExpression('=', value.expression, t.identifier('_node')),
              )
            : value.expression;
        }

        /** Whether a name stands for a `let` anywhere in the file. */
        function isVariable(name: string): boolean {
          let found = false;
          program.traverse({
            VariableDeclaration({ node }) {
              if (node.kind !== 'let') return;
              found ||= node.declarations.some(({ id }) => t.isIdentifier(id, { name }));
            },
          });
          return found;
        }

        function childrenOf(children: types.JSXElement['children']): types.Expression[] {
          return children.flatMap((child): types.Expression[] => {
            if (t.isJSXText(child)) {
              const text = trimmed(child.value);
              return text === '' ? [] : [t.stringLiteral(text)];
            }
            if (t.isJSXElement(child) || t.isJSXFragment(child)) return [child];
            if (t.isJSXSpreadChild(child)) return [t.arrowFunctionExpression([], child.expression)];
            return t.isJSXEmptyExpression(child.expression) ? [] : [following(child.expression)];
          });
        }

        /** A child as it is, or as a function where it follows signals. */
        function following(child: types.Expression): types.Expression {
          if (!changes(child)) return child;
          if (t.isCallExpression(child) && child.arguments.length === 0 && t.isIdentifier(child.callee))
            return child.callee;
          return t.isConditionalExpression(child) || t.isLogicalExpression(child, { operator: '&&' })
            ? conditional(child)
            : t.arrowFunctionExpression([], child);
        }

        function conditional(child: types.ConditionalExpression | types.LogicalExpression): types.Expression {
          const [test, ...branches] = t.isConditionalExpression(child)
            ? [child.test, child.consequent, child.alternate]
            : [child.left, child.right];
          if (!changes(test) || !branches.some(isMade)) return t.arrowFunctionExpression([], child);
          return callOf(
            'either',
            [test, ...branches].map((each) => t.arrowFunctionExpression([], each)),
          );
        }

        /** Whether it makes something: elements, or what a call gives. */
        function isMade(expression: types.Expression): boolean {
          return contains(
            expression,
            (node) => t.isCallExpression(node) || t.isJSXElement(node) || t.isJSXFragment(node),
          );
        }

        /** Whether it may give something else later: it calls or reads something, outside of any function. */
        function changes(expression: types.Expression): boolean {
          return contains(
            expression,
            (node) =>
              (t.isCallExpression(node) && !made.has(node)) ||
              t.isOptionalCallExpression(node) ||
              t.isTaggedTemplateExpression(node) ||
              t.isMemberExpression(node) ||
              t.isOptionalMemberExpression(node),
          );
        }

        function contains(root: types.Node, is: (node: types.Node) => boolean): boolean {
          if (t.isFunction(root) || (made.has(root) && !is(root))) return false;
          if (is(root)) return true;
          if (t.isJSXElement(root) || t.isJSXFragment(root)) return false;
          return (t.VISITOR_KEYS[root.type] ?? []).some((key) => {
            const inside = root[key as keyof typeof root] as unknown as
              types.Node | readonly types.Node[] | null | undefined;
            return [inside].flat().some((node) => node && contains(node, is));
          });
        }

        function importOf(name: keyof typeof NAMES): types.ImportDeclaration {
          return t.importDeclaration(
            [t.importSpecifier(t.identifier(NAMES[name]), t.identifier(name))],
            t.stringLiteral(RUNTIME),
          );
        }

        function argumentsOf(attributes: types.Expression | null, children: types.Expression[]): types.Expression[] {
          if (attributes) return [attributes, ...children];
          return children.length > 0 ? [t.numericLiteral(0), ...children] : [];
        }

        function childCount(children: types.JSXElement['children']): number {
          return children.filter((child) =>
            t.isJSXText(child)
              ? trimmed(child.value) !== ''
              : !(t.isJSXExpressionContainer(child) && t.isJSXEmptyExpression(child.expression)),
          ).length;
        }
      },
    },
  };
}

/** Text as Solid has it: a line break with what stands around it is nothing, and any other space is one. */
function trimmed(text: string): string {
  const isBroken = text.includes('\n');
  const lines = text.split('\n').map((line, i) => (i > 0 ? line.trimStart() : line));
  return (isBroken ? lines.filter((line) => line.trim() !== '').join(' ') : text).replace(/\s+/g, ' ');
}
