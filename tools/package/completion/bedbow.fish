# Completion of bedbow for fish: commands and options as the program's own help names them, else files.
function __bedbow_words --description 'what may follow: "commands", or the "options" of the command named so far'
    set -l chain
    set -l help (bedbow --help 2>/dev/null)
    set -l past 0
    for word in (commandline -opc)[2..] # commands may have commands of their own
        if not contains -- $word (__bedbow_commands $help)
            set past 1
            break
        end
        set -a chain $word
        set help (bedbow $chain --help 2>/dev/null)
    end
    if test $argv[1] = options
        string match -rg '^  (?:-h,)?(--[a-z][a-z-]*)' -- $help
    else if test $past = 0
        __bedbow_commands $help
    end
end
function __bedbow_commands
    set -l at (contains -i -- Subcommands: $argv); or return
    for line in $argv[(math $at + 1)..]
        test -n "$line"; or return # what follows are examples
        string match -rg '^  ([a-z]+) ' -- $line
    end
end
complete -c bedbow -n __fish_use_subcommand -f
complete -c bedbow -n 'not string match -q -- "-*" (commandline -ct)' -a '(__bedbow_words commands)'
complete -c bedbow -n 'string match -q -- "-*" (commandline -ct)' -a '(__bedbow_words options)'
