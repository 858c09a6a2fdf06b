/** What each shell needs to ask the program for what may stand where one types: the program alone knows its commands and its home. */
export const SHELLS = ['bash', 'zsh', 'fish'] as const;
export type Shell = (typeof SHELLS)[number];

const BASH = `# Completion of pullbook for bash. Put this line into ~/.bashrc:
#   source <(pullbook completion bash)
_pullbook() {
	local line paths=
	COMPREPLY=()
	while IFS= read -r line; do
		line=\${line%%$'\\t'*}
		COMPREPLY+=("$line")
		case $line in *[/.\\ ]*) paths=1 ;; esac
	done < <("\${COMP_WORDS[0]}" completion bash -- "\${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null)
	# Paths and names are written as the shell needs them; a folder is followed by no space.
	if [[ $paths ]]; then compopt -o filenames 2>/dev/null; fi
	if [[ \${#COMPREPLY[@]} -eq 1 && "\${COMPREPLY[0]}" == */ ]]; then compopt -o nospace 2>/dev/null; fi
}
complete -o nosort -o bashdefault -o default -F _pullbook pullbook 2>/dev/null ||
	complete -o bashdefault -o default -F _pullbook pullbook
`;

const ZSH = `#compdef pullbook
# Completion of pullbook for zsh. Put this line into ~/.zshrc, after compinit:
#   source <(pullbook completion zsh)
_pullbook() {
	local line
	local -a lines values shown folders
	lines=("\${(@f)$("\${words[1]}" completion zsh -- "\${(@Q)words[2,CURRENT]}" 2>/dev/null)}")
	for line in $lines; do
		if [[ $line == */$'\\t'* ]]; then
			folders+=("\${line%%$'\\t'*}")
		else
			values+=("\${line%%$'\\t'*}")
			shown+=("\${line/$'\\t'/  }")
		fi
	done
	(( $#values + $#folders )) || { _files; return }
	(( $#values )) && compadd -l -V pullbook -d shown -a values
	(( $#folders )) && compadd -V folders -S '' -a folders
	return 0
}
if [[ $funcstack[1] == _pullbook ]]; then _pullbook; else compdef _pullbook pullbook; fi
`;

const FISH = `# Completion of pullbook for fish. Write it once:
#   pullbook completion fish > ~/.config/fish/completions/pullbook.fish
function __pullbook_complete
	set -l words (commandline -opc)
	set -l program $words[1]
	set -e words[1]
	set -l typed (commandline -ct)
	$program completion fish -- $words "$typed" 2>/dev/null
end
complete -c pullbook -f -k -a '(__pullbook_complete)'
`;

export const SCRIPTS: Readonly<Record<Shell, string>> = { bash: BASH, zsh: ZSH, fish: FISH };
