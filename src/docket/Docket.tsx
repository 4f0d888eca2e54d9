import type { ComponentType } from 'react';
import { useMemo } from 'react';
import type { GraphNode } from '../graph/job.ts';
import type { NodeKind } from '../graph/node-kind.ts';
import { inkSet } from '../nodes/ink-set.ts';
import { nodeKinds } from '../nodes/registry.ts';
import { useJob, useView } from '../store/hooks.ts';
import { bypass } from '../wiring/actions.ts';
import { canBypass } from '../wiring/graph-edits.ts';
import { useComplaints } from '../wiring/use-complaints.ts';
import styles from './Docket.module.css';
import { FieldRow } from './FieldRow.tsx';
import { fieldsOf } from './fields.ts';
import { InkSetForm } from './InkSetForm.tsx';
import { KeptRow } from './KeptRow.tsx';
import { OtherSettings } from './other-settings.ts';
import { strings } from './strings.ts';

/** Forms for shapes that the schema-made one does not cover, by kind. */
const OWN_FORMS: Readonly<Record<string, ComponentType<{ node: GraphNode }>>> = {
  [inkSet.kind]: InkSetForm,
};

/** Whether presets of a kind are settings of its nodes; those of Hand marks are what strokes are drawn with. */
function presetsAreSettings({ presets, settings }: NodeKind): boolean {
  return presets !== undefined && Object.keys(presets.shape.shape).every((name) => name in settings.shape);
}

function Complaints({ node }: { node: string }) {
  const complaints = useComplaints(node);
  if (complaints.length === 0) return null;
  return (
    <ul className={styles.complaints} aria-label={strings.complaints}>
      {complaints.map(({ code, message, severity }) => (
        <li key={`${code} ${message}`} data-severity={severity}>
          {message}
        </li>
      ))}
    </ul>
  );
}

function Form({ node, kind }: { node: GraphNode; kind: NodeKind }) {
  const fields = useMemo(() => fieldsOf(kind), [kind]);
  const Own = OWN_FORMS[kind.kind];
  const all = useMemo(
    () => ({
      ...Object.fromEntries(fields.map(({ name, usual }) => [name, usual])),
      ...node.settings,
    }),
    [fields, node.settings],
  );
  if (fields.length === 0) return <p className={styles.quiet}>{strings.noSettings}</p>;
  return (
    <OtherSettings value={all}>
      {Own && <Own node={node} />}
      {fields
        .filter((field) => field.as !== 'unknown')
        .map((field) => (
          <FieldRow key={field.name} node={node.id} field={field} set={node.settings[field.name]} />
        ))}
    </OtherSettings>
  );
}

function Sheet({ node, kind }: { node: GraphNode; kind: NodeKind }) {
  return (
    <>
      <header className={styles.head}>
        <h3>{kind.title}</h3>
        {canBypass(kind) && (
          <button
            type="button"
            className={styles.word}
            aria-pressed={node.bypassed}
            onClick={() => bypass(node.id, !node.bypassed)}
          >
            {strings.bypass}
          </button>
        )}
      </header>
      <p className={styles.quiet}>{node.bypassed ? strings.bypassed : kind.help}</p>
      <Complaints node={node.id} />
      {presetsAreSettings(kind) && <KeptRow node={node} kind={kind} />}
      <Form node={node} kind={kind} />
    </>
  );
}

/** The chosen node: what it does, what it complains of, and its settings. */
export function Docket() {
  const chosen = useView((state) => state.node);
  const node = useJob((job) => job.graph.nodes.find(({ id }) => id === chosen));
  const kind = node && nodeKinds.get(node.kind);
  return (
    <div className={styles.docket}>
      <h2 className={styles.heading}>{strings.heading}</h2>
      {node && kind ? (
        <Sheet key={node.id} node={node} kind={kind} />
      ) : (
        <p className={styles.quiet}>{strings.none}</p>
      )}
    </div>
  );
}
