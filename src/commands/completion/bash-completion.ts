import type { CompletedCommand } from './completion-spec.ts';

/** A completion script for bash 3.2 or newer; where it offers nothing the shell completes file names. */
export function bashCompletion(commands: readonly CompletedCommand[]): string {
  const names = commands.map(({ name }) => name);
  return `# Completion of meltbounds for bash: source <(meltbounds completion bash)
_meltbounds() {
  local current="\${COMP_WORDS[COMP_CWORD]}" previous="\${COMP_WORDS[COMP_CWORD-1]}" command="\${COMP_WORDS[1]}"
  COMPREPLY=()
  if [[ $COMP_CWORD -eq 1 ]]; then
    COMPREPLY=($(compgen -W '${[...names, 'help', '--help', '--version'].join(' ')}' -- "$current"))
    return
  fi
  case "$command $previous" in
${commands.flatMap(valueCases).join('\n')}
  esac
  local words=''
  case "$command" in
${commands.map(wordCase).join('\n')}
  esac
  COMPREPLY=($(compgen -W "$words" -- "$current"))
}
complete -o default -F _meltbounds meltbounds
`;
}

/** After an option that takes a value: its choices, or whatever the shell would complete. */
function valueCases({ name, options }: CompletedCommand): string[] {
  return options
    .filter(({ takesValue }) => takesValue)
    .map(({ names, choices }) => {
      const patterns = names.map((option) => `'${name} ${option}'`).join('|');
      const reply =
        choices.length === 0 ? '' : ` COMPREPLY=($(compgen -W '${choices.join(' ')}' -- "$current"));`;
      return `    ${patterns})${reply} return ;;`;
    });
}

/** Options are offered where one is begun, so that file names complete everywhere else. */
function wordCase({ name, options, choices }: CompletedCommand): string {
  const words = options.flatMap(({ names }) => names.filter((option) => option.startsWith('--')));
  const first =
    choices.length === 0 ? '' : ` [[ $COMP_CWORD -eq 2 && $current != -* ]] && words='${choices.join(' ')}';`;
  return `    ${name})${first} [[ $current == -* ]] && words='${words.join(' ')}' ;;`;
}
