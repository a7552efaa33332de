using HarnessDraw.Checking;
using HarnessDraw.Reading;

namespace HarnessDraw.Benchmarks;

/// <summary>The examples of the repository, read from disk.</summary>
internal static class ExampleHarness
{
    public const string Saloon = "brackmere-six";
    public const string Tractor = "dunmarrow-18";
    public const string Coach = "aldervane-coach";

    public static string PathOf(string name) => Path.Combine(Root(), "examples", name + ".yaml");

    public static CheckedPlan Planned(string file)
    {
        var outcome = HarnessCompiler.Plan(file, new DiskFiles(), new RuleSettings());
        return outcome.Value ?? throw new InvalidOperationException(string.Join('\n', outcome.Diagnostics));
    }

    private static string Root()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "HarnessDraw.sln")))
            {
                return at.FullName;
            }
        }

        throw new DirectoryNotFoundException("HarnessDraw.sln");
    }
}
