# Completion of bedbow for bash: commands and options as the program's own help names them, else files.
_bedbow() {
  local word=${COMP_WORDS[COMP_CWORD]} path=() commands help i
  COMPREPLY=()
  for ((i = 1; ; i++)); do # commands may have commands of their own
    help=$(bedbow "${path[@]}" --help 2>/dev/null)
    commands=$(sed -nE '/^Subcommands:/,/^$/s/^  ([a-z]+) .*/\1/p' <<<"$help" | tr '\n' ' ')
    [[ $i -lt COMP_CWORD && " $commands" == *" ${COMP_WORDS[i]} "* ]] || break
    path+=("${COMP_WORDS[i]}")
  done
  if [[ $word == -* ]]; then
    mapfile -t COMPREPLY < <(compgen -W "$(sed -nE 's/^  (-h,)?(--[a-z][a-z-]*).*/\2/p' <<<"$help")" -- "$word")
    return
  fi
  [[ $i -ne COMP_CWORD ]] || mapfile -t COMPREPLY < <(compgen -W "$commands" -- "$word")
  [[ ${#path[@]} -gt 0 ]] || return
  mapfile -t -O ${#COMPREPLY[@]} COMPREPLY < <(compgen -f -- "$word")
  compopt -o filenames
}
complete -F _bedbow bedbow
