using System.Diagnostics.CodeAnalysis;

namespace ServiceRunner.Tests.Shared;

/// <summary>A test that needs an outside program: skipped by name at home where it is missing, failed in CI.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class FactNeedingAttribute : FactAttribute
{
    [SuppressMessage("Design", "CA1019", Justification = "The reason stands in Skip.")]
    public FactNeedingAttribute(params string[] programs)
    {
        string? missing = programs.FirstOrDefault(p => Find(p) is null);
        if (missing is not null && Environment.GetEnvironmentVariable("CI") is null) Skip = $"needs {missing}, which is not on this machine";
    }

    /// <summary>Where a program is on the PATH; for a name in capitals, the file that this variable names.</summary>
    public static string? Find(string program)
    {
        if (program.All(c => char.IsUpper(c) || c == '_'))
            return Environment.GetEnvironmentVariable(program) is { } path && File.Exists(path) ? path : null;
        return (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, program)).FirstOrDefault(File.Exists);
    }
}
