namespace ServiceRunner.Core.Procedures;

/// <summary>The form of an id of a repair as the job knows it: <c>2/jewel</c>. The job's own ids have no stroke.</summary>
public static class ApartId
{
    /// <summary>An id of a repair.</summary>
    public static string Of(string instance, string id) => $"{instance}/{id}";

    /// <summary>The repair's instance and the id in it; the instance is empty if the id is one of the job's own.</summary>
    public static (string Instance, string Id) Split(string id) =>
        id.IndexOf('/', StringComparison.Ordinal) is > 0 and var stroke ? (id[..stroke], id[(stroke + 1)..]) : ("", id);
}
