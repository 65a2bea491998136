# Completion of bedbow for bash: commands and options as the program's own help names them, else files.
_bedbow() {
  local word=${COMP_WORDS[COMP_CWORD]} command=${COMP_WORDS[1]}
  if [ "$COMP_CWORD" -eq 1 ]; then
    mapfile -t COMPREPLY < <(compgen -W "$(bedbow --help | sed -n '/^Subcommands:/,$p' | grep -oE '^  [a-z]+')" -- "$word")
  elif [[ $word == -* ]]; then
    mapfile -t COMPREPLY < <(compgen -W "$(bedbow "$command" --help 2>/dev/null | grep -oE '(^|[ ,])--[a-z][a-z-]*')" -- "$word")
  else
    mapfile -t COMPREPLY < <(compgen -f -- "$word")
    compopt -o filenames
  fi
}
complete -F _bedbow bedbow
