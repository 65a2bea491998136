#!/usr/bin/env python3
"""The completions of bash, zsh and fish against the help that the program gives: commands, the options of every command
and nothing else, files where files are expected; and the manual page against the same help, line by line.

    completion.py BEDBOW SOURCE_DIR MAN_PAGE

A shell that is not installed is reported as skipped; tools/install-packages brings all three.
"""
import os
import pty
import re
import select
import shutil
import subprocess
import sys
import tempfile

BASH = """
complete -p bedbow | grep -q -- '-F _bedbow bedbow' || echo 'not bound' >&2
compopt() { :; } # only valid inside a real completion
while IFS= read -r line; do
  read -ra COMP_WORDS <<<"$line"; [[ $line != *' ' ]] || COMP_WORDS+=('')
  COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); _bedbow
  echo "> $line"; [ ${#COMPREPLY[@]} -eq 0 ] || printf '%s\\n' "${COMPREPLY[@]}"
done"""
FISH = """
while read -l line
  echo "> $line"; complete -C "$line" | string replace -r '\\t.*' ''
end"""
# zsh completes only at a terminal: the widget writes out what the completion adds.
ZSH = """
fpath=({folder} $fpath); autoload -U compinit; compinit -u -D
compadd() {{ local -a found; builtin compadd -O found "$@"; (( ! $#found )) || print -rl -- $found >>{out}; builtin compadd "$@" }}
note() {{ print -r -- "> $BUFFER" >>{out}; _main_complete; compstate[insert]= }}
zle -C note list-choices note; bindkey '^T' note; bindkey '^X' kill-whole-line; PS1=; unset zle_bracketed_paste
print -r -- ready >>{out}
"""


def help_of(bedbow, path):
    return subprocess.run([bedbow, *path, "--help"], capture_output=True, text=True, check=True).stdout


def commands_in(text):
    return re.findall(r"^  ([a-z]+) ", text.partition("\nSubcommands:")[2].partition("\n\n")[0], re.M)


def options_in(text):
    lines = text.partition("\nOptions:\n")[2].partition("\n\n")[0].splitlines()
    return {name for line in lines if line.startswith("  -") for name in line.split()[0].split(",") if name[:2] == "--"}


def every_command(bedbow, path=()):
    """(path, help) of the program and each command under it."""
    text = help_of(bedbow, path)
    yield path, text
    for name in commands_in(text):
        yield from every_command(bedbow, (*path, name))


def by_line(text):
    """Completions that a shell offered, by the line to complete."""
    out, line = {}, None
    for word in text.splitlines():
        if word.startswith("> "):
            line = word[2:]
            out[line] = set()
        elif line is not None and word:
            out[line].add(word.rstrip("/").replace("\\ ", " "))
    return out


def ask_script(command, lines, world, place):
    run = subprocess.run(command, input="".join(f"{line}\n" for line in lines), capture_output=True, text=True, cwd=place,
                         env=world, timeout=120)
    return by_line(run.stdout), run.stderr.strip()


def ask_zsh(folder, lines, world, place):
    out = f"{place}/../zsh.out"
    script = f"{place}/../zsh.rc"
    open(script, "w", encoding="utf-8").write(ZSH.format(folder=folder, out=out))
    open(out, "w", encoding="utf-8").close()
    child, terminal = pty.fork()
    if child == 0:
        os.chdir(place)
        os.execve(shutil.which("zsh"), ["zsh", "-f", "-i"], dict(world, TERM="dumb"))
    said = b""

    def until(done):
        nonlocal said
        for _ in range(600):
            if done(open(out, encoding="utf-8").read()):
                return
            try:
                if select.select([terminal], [], [], 0.02)[0]:
                    said += os.read(terminal, 65536)
            except OSError:
                break
        raise RuntimeError(f"zsh did not answer; it said: {said[-800:]!r}")

    os.write(terminal, f"source {script}\n".encode())
    until(lambda text: "ready\n" in text)
    for i, line in enumerate(lines):
        os.write(terminal, b"\x18" + line.encode() + b"\x14" + b"\x18print -r -- done%d >>%s\n" % (i, out.encode()))
        until(lambda text: f"done{i}\n" in text)
    os.write(terminal, b"\x18exit\n")
    os.close(terminal)
    os.waitpid(child, 0)
    text = re.sub(r"^done\d+\n", "", open(out, encoding="utf-8").read(), flags=re.M)
    return by_line(text), ""


def main(bedbow, source, page):
    passed, faults = 0, []

    def check(what, wanted, got):
        nonlocal passed
        if wanted == got:
            passed += 1
        else:
            faults.append(f"{what}: wanted {wanted}, got {got}")

    folder = f"{os.path.abspath(source)}/tools/package/completion"
    commands = list(every_command(bedbow))
    check("the program has commands, and commands of commands", True, len(commands) > 10 and ("sweep", "merge") in dict(commands))
    wanted = {"bedbow nonsense --": options_in(commands[0][1]), "bedbow sw": {"sweep"}, "bedbow sweep me": {"merge"},
              "bedbow solve ha": {"hat.toml", "half moon"}, "bedbow solve --out ha": {"hat.toml", "half moon"},
              "bedbow solve hat.toml --js": {"--json"}}
    for path, text in commands:
        line = " ".join(("bedbow", *path))
        wanted[f"{line} --"] = options_in(text)
        check(f"{line} has options", True, "--help" in wanted[f"{line} --"])
        if not path:
            wanted[f"{line} "] = set(commands_in(text))
    with tempfile.TemporaryDirectory() as scratch:
        place = f"{scratch}/place"
        os.makedirs(f"{place}/half moon")
        open(f"{place}/hat.toml", "w", encoding="utf-8").close()
        os.mkdir(f"{scratch}/bin")
        os.symlink(os.path.abspath(bedbow), f"{scratch}/bin/bedbow")
        world = dict(os.environ, PATH=f"{scratch}/bin:{os.environ['PATH']}", HOME=scratch, LC_ALL="C.UTF-8")
        shells = {
            "bash": lambda: ask_script(["bash", "--norc", "-c", f"source {folder}/bedbow.bash{BASH}"], wanted, world, place),
            "zsh": lambda: ask_zsh(folder, wanted, world, place),
            "fish": lambda: ask_script(["fish", "--no-config", "-c", f"source {folder}/bedbow.fish{FISH}"], wanted, world, place),
        }
        for shell, ask in shells.items():
            if not shutil.which(shell):
                print(f"{shell} is not installed: its completion was not tried")
                continue
            got, trouble = ask()
            check(f"{shell} complains", "", trouble)
            for line, words in wanted.items():
                check(f'{shell}, "{line}"', words, got.get(line))
    roff = open(page, encoding="utf-8").read()
    plain = re.sub(r"^\\&", "", roff, flags=re.M).replace("\\-", "-").replace("\\e", "\\").splitlines()
    for path, text in commands:
        at = plain.index(".SS " + " ".join(path)) if path else 0
        lines = text.strip("\n").splitlines()
        check(f"man page, {' '.join(path) or 'bedbow'}", True,
              any(plain[i : i + len(lines)] == lines for i in range(at, len(plain))))
    if shutil.which("man"):
        run = subprocess.run(["man", "--warnings", "-E", "UTF-8", "-l", "-Tutf8", "-Z", page], capture_output=True, text=True,
                             env=dict(os.environ, MANWIDTH="100"), check=False)
        check("man complains of the page", "", run.stderr.strip())
    print("\n".join(faults))
    print(f"completion: {passed} passed, {len(faults)} failed")
    return bool(faults)


sys.exit(main(*sys.argv[1:4]))
