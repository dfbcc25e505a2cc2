"""The man page and the shells' completions, made from what the program says of itself.

    pages_from_help.py PROGRAM FOLDER DATE

Writes FOLDER/keenfall.1, FOLDER/keenfall.bash, FOLDER/_keenfall (zsh) and FOLDER/keenfall.fish; DATE, as
2026-11-27, is what the man page is dated. There is no second text to keep in step: commands and options
are those of `PROGRAM help`.
"""

import re
import subprocess
import sys
import textwrap
from dataclasses import dataclass, field
from pathlib import Path

OPTION = re.compile(r"--[a-z][a-z-]*=?")
KINDS_OF_FILES = "keen csv xlsx ods".split()  # offered before all others: notebooks and tables


@dataclass
class Part:
    """One heading of a help text, with its paragraphs and its entries (what is typed, what it does)."""

    heading: str = ""
    paragraphs: list = field(default_factory=list)
    entries: list = field(default_factory=list)


def parts_of(text):
    """Entries stand two columns in, what they do is 26 in; a heading is a line above entries."""
    parts = [Part()]
    lines = text.splitlines()
    below = zip(lines, lines[1:] + [""], strict=True)
    begins_anew = True
    for line, next_line in below:
        entry = re.match(r"  (\S.*?)(?:  +(\S.*))?$", line)
        if not line:
            begins_anew = True
        elif line.startswith(" " * 20) and parts[-1].entries:
            typed, does = parts[-1].entries[-1]
            parts[-1].entries[-1] = (typed, f"{does} {line.strip()}".strip())
        elif entry:
            parts[-1].entries.append(split_entry(line, next_line))
        elif next_line.startswith("  ") and begins_anew:
            parts.append(Part(heading=line))
        elif begins_anew:
            if parts[-1].entries:
                parts.append(Part())
            parts[-1].paragraphs.append(line)
            begins_anew = False
        else:
            parts[-1].paragraphs[-1] += f" {line}"
    return parts


def split_entry(line, next_line):
    """What it does begins on the same line where what is typed is at most 23 columns wide; else all of it
    is below, which shows by a first word there that would still have found room here."""
    short = len(line) > 26 and line[25] == " " and line[26] != " "
    words_below = next_line.split() if next_line.startswith(" " * 26) else []
    if not short or (words_below and len(line) + 1 + len(words_below[0]) <= 80):
        return line.strip(), ""
    return line[:26].strip(), line[26:].strip()


def roff(text):
    """Lines of 78 bytes at most, none of which begins as a request does."""
    text = text.replace("\\", "\\e").replace("-", "\\-").replace("µ", "\\(mc").replace("°", "\\(de")
    lines = textwrap.wrap(text, 76, break_long_words=False, break_on_hyphens=False)
    return "\n".join("\\&" + line if line[:1] in ".'" else line for line in lines)


def man_page(version, date, whole, by_command):
    summary = whole[0].paragraphs[0]
    out = [
        f'.TH KEENFALL 1 {date} "Keenfall {version}" "User Commands"',
        ".SH NAME",
        "keenfall \\- which edge stays keen longer, and how sure that is",
        ".SH SYNOPSIS",
        ".B keenfall",
        ".I COMMAND",
        "[...]",
        ".SH DESCRIPTION",
        roff(summary),
        ".SH COMMANDS",
    ]
    for typed, does in whole[0].entries:
        out += [".TP", f".B {roff(typed)}", roff(does)]
    for command, parts in by_command.items():
        out.append(f'.SH "KEENFALL {roff(command.upper())}"')
        usage, *paragraphs = parts[0].paragraphs
        out += [f".B {roff(usage)}"]
        for index, part in enumerate(parts):
            if part.heading:
                out.append(f".SS {roff(part.heading)}")
            for paragraph in paragraphs if index == 0 else part.paragraphs:
                out += [".PP", roff(paragraph)]
            for typed, does in part.entries:
                out += [".TP", f".B {roff(typed)}", roff(does)]
    out += [
        ".SH CAUTION",
        roff(
            "Fresh edges cut people. Cut away from yourself, keep the other hand behind the edge, and follow "
            "the local rules of your workplace."
        ),
    ]
    return "\n".join(out) + "\n"


def options_of(parts):
    """Every option, with = where it takes a value, once and in order."""
    found = {}
    for part in parts:
        for typed, does in part.entries:
            for option in OPTION.findall(typed):
                found.setdefault(option, does)
    return found


def options_by_command(by_command):
    """An entry that names several options leaves their values out ("--column, --sheet"): what takes a value
    with one command takes it with every one."""
    options = {command: options_of(parts) for command, parts in by_command.items()}
    with_value = {option for found in options.values() for option in found if option.endswith("=")}
    for command, found in options.items():
        options[command] = {
            f"{option}=" if f"{option}=" in with_value - found.keys() else option: does for option, does in found.items()
        }
    return options


def takes_files(parts):
    """As its first line says: keenfall take FILE.keen TABLE..."""
    return bool(re.search(r"\b(FILE|TABLE)\b", parts[0].paragraphs[0]))


def bash_completion(by_command):
    out = [
        "# Completion of keenfall for bash; made from the program's own help.",
        "_keenfall() {",
        "  local word=$2 before=${COMP_WORDS[COMP_CWORD - 1]} options='' takes_files='' found",
        "  COMPREPLY=()",
        "  if ((COMP_CWORD == 1)); then",
        f"    COMPREPLY=($(compgen -W '{' '.join(by_command)} --version' -- \"$word\"))",
        "    return",
        "  fi",
        '  case ${COMP_WORDS[1]} in',
    ]
    options = options_by_command(by_command)
    for command, parts in by_command.items():
        if command != "help":
            files = " takes_files=yes" if takes_files(parts) else ""
            out.append(f"    {command}) options='{' '.join(options[command])}'{files} ;;")
    out += [
        f"    help) options='{' '.join(by_command)}' ;;",
        "  esac",
        "  if [[ $word == -* || ${COMP_WORDS[1]} == help ]]; then",
        '    COMPREPLY=($(compgen -W "$options" -- "$word"))',
        "    [[ ${COMPREPLY[0]-} != *= ]] || compopt -o nospace",
        "  elif [[ $before == = || ${COMP_WORDS[COMP_CWORD]} == = || \" $options \" == *\" $before= \"* ]]; then",
        "    compopt -o filenames -o default",  # what an option is to be: any file
        "  elif [[ $takes_files ]]; then",
        "    while IFS= read -r found; do",
        f"      [[ ! -d $found && ${{found,,}} != *.@({'|'.join(KINDS_OF_FILES)}) ]] || COMPREPLY+=(\"$found\")",
        '    done < <(compgen -f -- "$word")',
        "    compopt -o filenames -o default",  # any file where there is none of these
        "  fi",
        "}",
        "complete -F _keenfall keenfall",
    ]
    return "\n".join(out) + "\n"


def quoted(text):
    return "'" + text.replace("'", "'\\''") + "'"


def zsh_completion(by_command, words):
    def line(option, does):
        told = re.sub(r"[\[\]:]", "", does)
        value = ":value:_files" if option.endswith("=") else ""
        return quoted(f"{option.rstrip('=')}{'=-' if value else ''}[{told}]{value}")

    out = ["#compdef keenfall", "if ((CURRENT == 2)); then", "  local -a commands=("]
    out += [f"    {quoted(command + ':' + words.get(command, ''))}" for command in by_command]
    out += ["  )", "  _describe command commands", "  return", "fi", "case $words[2] in"]
    options = options_by_command(by_command)
    files = f" '*:file:_files -g \"*.({'|'.join(KINDS_OF_FILES)})(-.)\"'"
    for command, parts in by_command.items():
        lines = " ".join(line(option, does) for option, does in options[command].items())
        out.append(f"  {command}) _arguments {lines}{files if takes_files(parts) else ''} ;;")
    return "\n".join(out + ["esac"]) + "\n"


def fish_completion(by_command, words):
    out = ["# Completion of keenfall for fish; made from the program's own help."]
    for command in by_command:
        told = quoted(words.get(command, "")).replace("'\\''", "\\'")
        out.append(f"complete -c keenfall -n __fish_use_subcommand -f -a {command} -d {told}")
    options = options_by_command(by_command)
    for command, parts in by_command.items():
        if not takes_files(parts):
            out.append(f"complete -c keenfall -n '__fish_seen_subcommand_from {command}' -f")
        for option, does in options[command].items():
            told = "'" + does.replace("\\", "\\\\").replace("'", "\\'") + "'"
            needs = " -r -F" if option.endswith("=") else ""
            out.append(
                f"complete -c keenfall -n '__fish_seen_subcommand_from {command}' -l {option[2:].rstrip('=')}{needs} -d {told}"
            )
    return "\n".join(out) + "\n"


def commands_in(whole):
    """In the order of the help text, each once, with the first words said of it."""
    words = {}
    for typed, does in whole[0].entries:
        match = re.match(r"keenfall ([a-z]+)", typed)
        if match:
            words.setdefault(match[1], does)
    return words


def main():
    program, folder, date = sys.argv[1], Path(sys.argv[2]), sys.argv[3]

    def said(*asked):
        done = subprocess.run([program, *asked], capture_output=True, text=True, check=True)
        return done.stdout

    version = said("--version").split()[-1]
    whole = parts_of(said("help"))
    words = commands_in(whole)
    by_command = {command: parts_of(said("help", command)) for command in words if command != "help"}
    by_command["help"] = [Part(paragraphs=["keenfall help [COMMAND]", words["help"]])]
    folder.mkdir(parents=True, exist_ok=True)
    pages = {
        "keenfall.1": man_page(version, date, whole, by_command),
        "keenfall.bash": bash_completion(by_command),
        "_keenfall": zsh_completion(by_command, words),
        "keenfall.fish": fish_completion(by_command, words),
    }
    for name, text in pages.items():
        (folder / name).write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
