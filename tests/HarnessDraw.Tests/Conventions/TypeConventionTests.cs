using System.Reflection;
using System.Xml.Linq;

namespace HarnessDraw.Tests.Conventions;

public class TypeConventionTests
{
    private static readonly Assembly[] Shipped = [typeof(global::HarnessDraw.Drawing.Sheet).Assembly, typeof(global::HarnessDraw.Cli.Terminal).Assembly];

    [Fact]
    public void Every_public_type_says_what_it_is()
    {
        var silent = new List<string>();
        foreach (var assembly in Shipped)
        {
            var documented = Summaries(assembly);
            silent.AddRange(assembly.GetExportedTypes().Where(t => !IsCaseOfAClosedSet(t)).Select(t => t.FullName!.Replace('+', '.')).Where(name => !documented.Contains(name)));
        }

        Assert.Empty(silent.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void No_type_has_the_name_of_a_namespace()
    {
        var types = Shipped.SelectMany(a => a.GetTypes()).Where(t => t.Namespace?.StartsWith("HarnessDraw", StringComparison.Ordinal) == true).ToList();
        var words = types.SelectMany(t => t.Namespace!.Split('.')).ToHashSet(StringComparer.Ordinal);
        Assert.Empty(types.Where(t => !t.IsNested && words.Contains(t.Name)).Select(t => t.FullName));
    }

    [Fact]
    public void No_type_hides_behind_an_empty_word()
    {
        string[] empty = ["Manager", "Util", "Utils", "Utility", "Helper", "Helpers"];
        var types = Shipped.SelectMany(a => a.GetTypes()).Where(t => t.Namespace?.StartsWith("HarnessDraw", StringComparison.Ordinal) == true);
        Assert.Empty(types.Where(t => empty.Any(w => t.Name.EndsWith(w, StringComparison.Ordinal))).Select(t => t.FullName));
    }

    [Fact]
    public void Public_records_have_no_setters_after_construction()
    {
        var open = Shipped.SelectMany(a => a.GetExportedTypes())
            .Where(t => t.GetMethod("<Clone>$") is not null)
            .SelectMany(t => t.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly))
            .Where(p => p.SetMethod is { IsPublic: true } set && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(System.Runtime.CompilerServices.IsExternalInit)));
        Assert.Empty(open.Select(p => $"{p.DeclaringType!.Name}.{p.Name}"));
    }

    /// <summary>A nested case of a closed set (PathStep.LineTo) is explained by the set.</summary>
    private static bool IsCaseOfAClosedSet(Type type) => type.IsNested && type.BaseType == type.DeclaringType;

    private static HashSet<string> Summaries(Assembly assembly)
    {
        var file = Path.ChangeExtension(assembly.Location, ".xml");
        return XDocument.Load(file).Descendants("member")
            .Where(m => m.Attribute("name")!.Value.StartsWith("T:", StringComparison.Ordinal) && !string.IsNullOrWhiteSpace(m.Element("summary")?.Value))
            .Select(m => m.Attribute("name")!.Value[2..])
            .ToHashSet(StringComparer.Ordinal);
    }
}
