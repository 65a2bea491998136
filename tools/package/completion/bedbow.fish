# Completion of bedbow for fish: commands and options as the program's own help names them, else files.
complete -c bedbow -n __fish_use_subcommand -f -a "(bedbow --help | sed -n '/^Subcommands:/,\$p' | string match -rg '^  ([a-z]+)')"
complete -c bedbow -n 'not __fish_use_subcommand' -a "(bedbow (commandline -opc)[2] --help 2>/dev/null | string match -rag '(--[a-z][a-z-]*)')"
