import type { CompletedCommand, CompletedOption } from './completion-spec.ts';

/** A completion script for zsh, to be sourced or put as `_meltbounds` into a folder of `fpath`. */
export function zshCompletion(commands: readonly CompletedCommand[]): string {
  return `#compdef meltbounds
# Completion of meltbounds for zsh: source <(meltbounds completion zsh)
_meltbounds() {
  local -a commands
  commands=(
${commands.map(({ name, summary }) => `    ${quoted(`${name}:${summary}`)}`).join('\n')}
    'help:display help for command'
  )
  if (( CURRENT == 2 )); then
    _describe command commands
    return
  fi
  local command="\${words[2]}"
  shift words
  (( CURRENT-- ))
  case "$command" in
${commands.map(commandCase).join('\n')}
    *) _files ;;
  esac
}
if [[ "\${funcstack[1]}" == _meltbounds ]]; then
  _meltbounds "$@"
else
  compdef _meltbounds meltbounds
fi
`;
}

function commandCase({ name, options, choices }: CompletedCommand): string {
  const first = choices.length === 0 ? [] : [quoted(`1:value:(${choices.join(' ')})`)];
  const specs = [...options.flatMap(optionSpecs), ...first, quoted('*:file:_files')];
  return `    ${name})\n      _arguments \\\n        ${specs.join(' \\\n        ')} ;;`;
}

/** `--format[form of the report]:value:(text json)`, which may come again. */
function optionSpecs({ names, description, takesValue, choices }: CompletedOption): string[] {
  const text = description.replace(/[[\]:\\]/g, (character) => `\\${character}`);
  const values = choices.length === 0 ? '_files' : `(${choices.join(' ')})`;
  return names.map((name) => quoted(`*${name}[${text}]${takesValue ? `:value:${values}` : ''}`));
}

function quoted(text: string): string {
  return `'${text.replaceAll("'", "'\\''")}'`;
}
