package main

import "strings"

func completionCommand() *command {
	return &command{name: "completion", args: "bash|zsh|fish|powershell", what: "completion of commands and options for a shell",
		run: runCompletion,
		more: "For bash: put `source <(rebush completion bash)` into ~/.bashrc. For zsh the same in ~/.zshrc. " +
			"For fish: rebush completion fish | source. For PowerShell: " +
			"rebush completion powershell | Out-String | Invoke-Expression.",
		examples: []string{"rebush completion bash"}}
}

func runCompletion(e *env, _ options, words []string) error {
	shell, err := one(words, "shell (bash, zsh, fish or powershell)")
	if err != nil {
		return err
	}
	var flags []string
	for _, f := range flagDefs {
		flags = append(flags, "--"+f.name)
	}
	cmds := strings.Join(names(commands()), " ")
	asks := strings.Join(names(lookupCommand().sub), " ")
	switch shell {
	case "bash":
		e.printf(bashCompletion, cmds, asks, wayWords(), strings.Join(flags, " "))
	case "zsh":
		e.printf("autoload -Uz compinit bashcompinit && compinit && bashcompinit\n"+bashCompletion, cmds, asks,
			wayWords(), strings.Join(flags, " "))
	case "fish":
		for _, c := range commands() {
			e.printf("complete -c rebush -n __fish_use_subcommand -a %s -d '%s'\n", c.name,
				strings.ReplaceAll(c.what, "'", ""))
		}
		e.printf("complete -c rebush -n '__fish_seen_subcommand_from lookup' -a '%s'\n", asks)
		for _, f := range flagDefs {
			more := ""
			if f.value != "" {
				more = " -r"
			}
			if f.name == "way" {
				more += " -a '" + wayWords() + "'"
			}
			e.printf("complete -c rebush -l %s%s -d '%s'\n", f.name, more, strings.ReplaceAll(f.what, "'", ""))
		}
	case "powershell":
		e.printf(powerCompletion, quoted(names(commands())), quoted(names(lookupCommand().sub)),
			quoted(strings.Fields(wayWords())), quoted(flags))
	default:
		return usage("completion for %q is not known; there are bash, zsh, fish and powershell", shell)
	}
	return nil
}

const bashCompletion = `_rebush() {
  local word="${COMP_WORDS[COMP_CWORD]}"
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W "%s" -- "$word") $(compgen -f -X '!*.y*ml' -- "$word"))
  elif [ "${COMP_WORDS[1]}" = lookup ] && [ "$COMP_CWORD" -eq 2 ]; then
    COMPREPLY=($(compgen -W "%s" -- "$word"))
  elif [ "${COMP_WORDS[COMP_CWORD-1]}" = --way ]; then
    COMPREPLY=($(compgen -W "%s" -- "$word"))
  elif [[ "$word" == -* ]]; then
    COMPREPLY=($(compgen -W "%s" -- "$word"))
  else
    COMPREPLY=($(compgen -f -- "$word"))
  fi
}
complete -o filenames -F _rebush rebush
`

// quoted is a list as PowerShell writes it.
func quoted(list []string) string { return "'" + strings.Join(list, "','") + "'" }

const powerCompletion = `Register-ArgumentCompleter -Native -CommandName rebush -ScriptBlock {
  param($word, $line, $at)
  $before = @($line.CommandElements | Where-Object { $_.Extent.EndOffset -lt $at } | ForEach-Object { "$_" })
  $offer = @()
  if ($before.Count -le 1) { $offer = @(%s) }
  elseif ($before.Count -eq 2 -and $before[1] -eq 'lookup') { $offer = @(%s) }
  elseif ($before[-1] -eq '--way') { $offer = @(%s) }
  elseif ($word -like '-*') { $offer = @(%s) }
  $offer | Where-Object { $_ -like "$word*" } |
    ForEach-Object { [System.Management.Automation.CompletionResult]::new($_) }
}
`
