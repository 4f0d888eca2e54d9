import type { Tool } from '../app/registry.ts';
import { useView } from '../store/hooks.ts';
import { takeTool } from './tools.ts';

/** A button that takes a tool. */
export function ToolButton({ tool }: { tool: Tool }) {
  const taken = useView((state) => state.tool === tool.id);
  return (
    <button
      type="button"
      aria-pressed={taken}
      aria-keyshortcuts={tool.key.toUpperCase()}
      title={tool.help}
      onClick={() => takeTool(tool)}
    >
      {tool.title}
    </button>
  );
}
