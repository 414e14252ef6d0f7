using System.Text;

namespace Alburnum.Cli.Completion;

/// <summary>Scripts that let a shell complete commands and options; file names complete as the shell does by itself.</summary>
internal static class CompletionScripts
{
    /// <summary>For bash, and for zsh through its own bash mode.</summary>
    public static string Bash(CommandTree program)
    {
        var script = new StringBuilder();
        script.Append(
            """
            # Completion for alburnum; load it with: source <(alburnum completion bash)
            _alburnum() {
                local word="${COMP_WORDS[COMP_CWORD]}" path="" i
                for ((i = 1; i < COMP_CWORD; i++)); do
                    case "${COMP_WORDS[i]}" in
                        -*) break ;;
                        *) case " ${_alburnum_paths} " in
                            *" ${path:+$path/}${COMP_WORDS[i]} "*) path="${path:+$path/}${COMP_WORDS[i]}" ;;
                            *) break ;;
                        esac ;;
                    esac
                done
                local commands="" options=""
                case "$path" in

            """
        );
        foreach (var command in program.All)
            script.Append(
                $"        \"{Key(command)}\") commands=\"{Names(command)}\" options=\"{string.Join(' ', command.Options)}\" ;;\n"
            );
        script.Append(
            """
                esac
                case "$word" in
                    -*) COMPREPLY=($(compgen -W "$options" -- "$word")) ;;
                    *) COMPREPLY=($(compgen -W "$commands" -- "$word"))
                        [ "${#COMPREPLY[@]}" -gt 0 ] || COMPREPLY=($(compgen -f -- "$word")) ;;
                esac
            }

            """
        );
        script.Append($"_alburnum_paths=\"{string.Join(' ', program.All.Skip(1).Select(Key))}\"\n");
        script.Append("complete -o filenames -F _alburnum alburnum ./alburnum\n");
        return script.ToString();
    }

    /// <summary>For zsh.</summary>
    public static string Zsh(CommandTree program) =>
        "autoload -U +X bashcompinit && bashcompinit\n"
        + Bash(program).Replace("completion bash)", "completion zsh)", StringComparison.Ordinal);

    /// <summary>For fish, which shows what each command does beside its name.</summary>
    public static string Fish(CommandTree program)
    {
        var script = new StringBuilder("# Completion for alburnum; load it with: alburnum completion fish | source\n");
        foreach (var command in program.All)
        {
            var seen = string.Concat(command.Path.Select(word => $"; and __fish_seen_subcommand_from {word}"));
            foreach (var below in command.Commands)
                script.Append(
                    $"complete -c alburnum -n 'not __fish_seen_subcommand_from {Names(command)}{seen}' -a {below.Path[^1]} "
                        + $"-d '{below.Description.Replace("'", "\\'", StringComparison.Ordinal)}'\n"
                );
            if (command.Path.Count > 0)
                foreach (var option in command.Options)
                    script.Append($"complete -c alburnum -n 'true{seen}' -l {option[2..]}\n");
        }
        return script.ToString();
    }

    private static string Key(CommandTree command) => string.Join('/', command.Path);

    private static string Names(CommandTree command) =>
        string.Join(' ', command.Commands.Select(below => below.Path[^1]));
}
