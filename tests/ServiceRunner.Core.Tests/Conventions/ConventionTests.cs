using System.Reflection;
using ServiceRunner.Core.Jobs;

namespace ServiceRunner.Core.Tests.Conventions;

public class ConventionTests
{
    private static readonly Assembly Core = typeof(Job).Assembly;

    [Fact]
    public void Core_depends_on_nothing_but_the_framework()
    {
        IEnumerable<string> others = Core.GetReferencedAssemblies().Select(a => a.Name!).Where(n => !n.StartsWith("System", StringComparison.Ordinal) && n is not ("netstandard" or "mscorlib"));
        Assert.Empty(others);
    }

    [Fact]
    public void Every_kind_of_deviation_is_in_the_one_list_that_a_workshop_file_reads() =>
        Assert.Equal(typeof(Deviation).GetFields().Where(f => f.IsLiteral).Select(f => (string)f.GetRawConstantValue()!).Order(), Deviation.Kinds.Order());

    [Fact]
    public void Record_families_are_closed()
    {
        foreach (Type family in new[] { typeof(JobEvent), typeof(JobAction), typeof(Rejection), typeof(Phase), typeof(PartPlace), typeof(Decision), typeof(Blocker), typeof(ServiceRunner.Core.Lubricants.PointConcern), typeof(ServiceRunner.Core.Lubricants.RoleFit), typeof(ServiceRunner.Core.Benches.BenchEvent) })
            Assert.All(Core.GetTypes().Where(t => t != family && family.IsAssignableFrom(t)), t => Assert.True(t.IsSealed && t.DeclaringType == family, $"{t} is not sealed within {family}"));
    }
}
