import type { JSX } from 'solid-js';

/** A button that takes one file from disk. The same file may be taken twice. */
export function FileButton(props: {
  readonly label: string;
  readonly accept: string;
  readonly onFile: (file: File) => void;
}): JSX.Element {
  return (
    <label class="button file">
      {props.label}
      <input
        type="file"
        accept={props.accept}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          if (file) props.onFile(file);
          event.currentTarget.value = '';
        }}
      />
    </label>
  );
}
