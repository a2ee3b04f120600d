namespace ServiceRunner.Verbs;

/// <summary>Prints a script that lets a shell complete verbs and options by asking the program.</summary>
internal static class CompletionVerb
{
    public static int Run(string shell)
    {
        string? script = shell switch
        {
            "bash" => "_servicerunner() { local IFS=$'\\n'; COMPREPLY=( $(compgen -W \"$(servicerunner \"[suggest:${COMP_POINT}]\" \"${COMP_LINE}\" 2>/dev/null)\" -- \"${COMP_WORDS[COMP_CWORD]}\") ); }\ncomplete -o default -F _servicerunner servicerunner",
            "zsh" => "_servicerunner() { local -a found; found=(\"${(@f)$(servicerunner \"[suggest:${CURSOR}]\" \"${BUFFER}\" 2>/dev/null)}\"); compadd -- \"${found[@]}\"; }\ncompdef _servicerunner servicerunner",
            "fish" => "complete -c servicerunner -f -a '(servicerunner \"[suggest:\"(commandline -C)\"]\" (commandline -cp) 2>/dev/null)'",
            _ => null,
        };
        if (script is null)
        {
            Console.Error.WriteLine($"servicerunner: no completion for '{shell}'; there is bash, zsh and fish.");
            return ExitCodes.Usage;
        }
        Console.Out.WriteLine(script);
        return ExitCodes.Done;
    }
}
